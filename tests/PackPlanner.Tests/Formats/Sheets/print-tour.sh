#!/bin/bash
# Prints every sheet of the three invented jobs in headless Chromium, on A4 and on Letter, and takes it at 360 pixels wide as on a phone.
# Says how many sheets of paper each takes beside how many it counts itself, whether anything is wider than the phone, and how large type,
# numbers and boxes come out as the browser lays them out; the images are for the eye, page by page. Not part of `dotnet test`.
# usage: tests/PackPlanner.Tests/Formats/Sheets/print-tour.sh FOLDER
set -u
[ $# -eq 1 ] || { echo "usage: print-tour.sh FOLDER"; exit 2; }
for tool in chromium pdftoppm pdfinfo; do
  command -v "$tool" >/dev/null || { echo "print-tour: $tool is not installed; nothing was tried"; exit 77; }
done
top=$(cd "$(dirname "$0")/../../../.." && pwd)
program="$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll"
[ -f "$program" ] || { echo "print-tour: build first: dotnet build -c Release"; exit 2; }
into=$1; mkdir -p "$into"; into=$(cd "$into" && pwd)
home=$(mktemp -d); trap 'rm -rf "$home"' EXIT
failed=0

browse() { timeout 60 chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir="$home" "$@" 2>/dev/null >"$home/out"; }

print_on() { # name of the paper, CSS size, sheet.html
  local page; page="$home/$(basename "$3")"
  sed "s/@page { size: auto;/@page { size: $2;/" "$3" >"$page"
  local pdf="${3%.html}-$1.pdf"
  browse --no-pdf-header-footer --print-to-pdf="$pdf" "file://$page" || { echo "FAILED: $pdf was not printed"; failed=1; return; }
  local paper said; paper=$(pdfinfo "$pdf" | awk '/^Pages:/{print $2}'); said=$(grep -c '<section class="page">' "$3")
  pdftoppm -r 60 -png "$pdf" "${pdf%.pdf}"
  if [ "$paper" = "$said" ]; then echo "$(basename "$(dirname "$3")") $(basename "$pdf"): $paper"; else echo "FAILED: $pdf takes $paper sheets of paper for $said pages"; failed=1; fi
}

phone() { # sheet.html
  # The width that the content needs is written into the title, which --dump-dom shows; the sheet itself runs no script.
  local page; page="$home/$(basename "$1")"
  sed 's/<meta http-equiv="Content-Security-Policy"[^>]*>//; s#</body>#<script>document.title="needs "+document.documentElement.scrollWidth</script></body>#' "$1" >"$page"
  # A window cannot be made narrower than 500 pixels, a frame in it can.
  printf '<!DOCTYPE html><style>body{margin:0}iframe{border:0;width:360px;height:4000px}</style><iframe src="%s" onload="document.title=this.contentDocument.title"></iframe>' "$(basename "$1")" >"$home/frame.html"
  browse --allow-file-access-from-files --window-size=500,4000 --dump-dom "file://$home/frame.html"
  local needs; needs=$(grep -o '<title>needs [0-9]*' "$home/out" | grep -o '[0-9]*')
  browse --allow-file-access-from-files --window-size=500,4000 --screenshot="${1%.html}-360px.png" "file://$home/frame.html"
  if [ "${needs:-9999}" -le 360 ]; then echo "$(basename "$(dirname "$1")") $(basename "$1") at 360 px: fits"; else echo "FAILED: $1 needs ${needs:-an unknown number of} px"; failed=1; fi
}

measure() { # sheet.html
  # As the browser lays it out on a wide screen, where sizes are those of the paper: 96 of its pixels are an inch.
  local page; page="$home/measured.html"
  cat >"$home/measure.js" <<'JS'
const mm = px => px * 25.4 / 96, pt = px => px * 72 / 96;
const least = (found, size) => { const all = [...document.querySelectorAll(found)].map(size); return all.length ? Math.min(...all).toFixed(1) : "-"; };
const type = e => pt(parseFloat(getComputedStyle(e).fontSize));
const drawn = e => pt(parseFloat(getComputedStyle(e).fontSize) * Math.hypot(e.getScreenCTM().a, e.getScreenCTM().b));
let gap = 0; // from the last strip of a page to its end: the upper half of a page always begins with one
for (const page of document.querySelectorAll(".page"))
  gap = Math.max(gap, mm(page.getBoundingClientRect().bottom - [...page.querySelectorAll(".strip")].pop().getBoundingClientRect().top));
const cut = [...document.querySelectorAll("td, .label, .caution")].filter(e => e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1).length;
document.title = `type ${least("p, td, th, .caution, .strip span", type)} pt, numbers ${least(".num", type)} pt, boxes ${least(".box", e => mm(e.getBoundingClientRect().width))} x ${least(".box", e => mm(e.getBoundingClientRect().height))} mm, drawings ${least(".drawing text", drawn)} pt, pictures ${least(".picture text", drawn)} pt, last strip ${gap.toFixed(0)} mm before the end, cut ${cut}`;
JS
  sed 's/<meta http-equiv="Content-Security-Policy"[^>]*>//' "$1" | sed "/<\\/body>/{
s/.*/<script>/
r $home/measure.js
a </script></body></html>
}" >"$page"
  browse --window-size=1000,4000 --dump-dom "file://$page"
  local told; told=$(grep -o '<title>type [^<]*' "$home/out" | cut -c8-)
  echo "$(basename "$(dirname "$1")") $(basename "$1"): ${told:-not measured}"
  echo "$told" | awk -F'[ ,]+' '{ exit !($2 >= 12 && ($5 == "-" || $5 >= 14) && ($8 == "-" || ($8 >= 25 && $10 >= 10)) && ($13 == "-" || $13 >= 14) && ($16 == "-" || $16 >= 12) && $20 <= 148 && $26 == 0) }' \
    || { echo "FAILED: $1: type from 12 pt, numbers from 14, boxes from 25 x 10 mm, a strip in each half page and nothing cut were expected"; failed=1; }
}

for job in trike tractor scooter; do
  rm -rf "${into:?}/$job"
  dotnet "$program" demo "$job" --into "$home/$job" >/dev/null && dotnet "$program" sheet "$home/$job/$job.job.json" --into "$into/$job" --date 2026-11-24 >/dev/null \
    || { echo "FAILED: no sheets of $job"; failed=1; continue; }
  for sheet in "$into/$job"/*.html; do
    print_on a4 A4 "$sheet"; print_on letter letter "$sheet"; phone "$sheet"; measure "$sheet"
  done
done
[ $failed -eq 0 ] && echo "print-tour: look at the images in $into" || echo "print-tour: FAILED"
exit $failed
