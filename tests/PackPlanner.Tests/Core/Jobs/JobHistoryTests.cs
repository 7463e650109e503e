using CsCheck;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Core.Jobs;

public class JobHistoryTests
{
    private static readonly Origin You = Origin.You(new DateOnly(2026, 11, 2));

    private static JobHistory New() => JobHistory.Of(new Job { Title = "tray" });

    private static JobChange Set(string key, double value) => JobChanges.Set(key, new Given(new JobValue.Number(value), You));

    [Fact]
    public void Undo_takes_back_the_last_change_and_names_it()
    {
        JobHistory job = New().Do(Set("series", 13)).Do(Set("parallel", 9));

        Assert.Equal("set cells in parallel", job.UndoName);
        JobHistory undone = job.Undo();

        Assert.Equal(13, undone.Now.Givens.Series);
        Assert.Null(undone.Now.Givens.Parallel);
        Assert.Equal("set cells in parallel", undone.RedoName);
        Assert.Equal(9, undone.Redo().Now.Givens.Parallel);
    }

    [Fact]
    public void The_revision_never_falls_so_that_no_two_sheets_share_a_number()
    {
        JobHistory job = New().Do(Set("series", 13)).Do(Set("parallel", 9)).Undo().Do(Set("parallel", 8));

        Assert.Equal(4, job.Revision);
    }

    // A sheet that is printed twice, with other ticks, shows one and the same pack.
    [Fact]
    public void Ticks_and_marks_can_be_taken_back_but_are_no_revision_of_the_pack()
    {
        JobHistory job = New().Do(Set("series", 13)).Do(JobChanges.TickSheet("pick", true)).Do(JobChanges.MarkCautions("caution-24", ["caution-24 group 1"], true));

        Assert.Equal(1, job.Revision);
        JobHistory back = job.Undo().Undo();
        Assert.Empty(back.Now.SheetsTicked);
        Assert.Empty(back.Now.CautionsRead);
        Assert.Equal(1, back.Revision);
        Assert.Equal(1, back.Redo().Revision);
        Assert.Equal(2, back.Undo().Revision);
    }

    [Fact]
    public void A_change_that_changes_nothing_is_not_counted()
    {
        JobHistory job = New().Do(Set("series", 13));

        Assert.Same(job, job.Do(Set("series", 13)));
    }

    [Fact]
    public void A_new_change_drops_what_was_taken_back()
    {
        JobHistory job = New().Do(Set("series", 13)).Undo().Do(Set("series", 14));

        Assert.Null(job.RedoName);
        Assert.Same(job, job.Redo());
    }

    // However often one goes back and forth, the job is the one that the standing changes give.
    [Fact]
    public void Any_walk_of_changes_undo_and_redo_ends_where_a_plain_list_says()
    {
        Gen.Int[0, 5].Array[0, 40].Sample(walk =>
        {
            JobHistory job = New();
            List<int> made = [];
            int at = 0;
            foreach (int step in walk)
            {
                if (step == 0)
                {
                    job = job.Undo();
                    at = Math.Max(0, at - 1);
                }
                else if (step == 1)
                {
                    job = job.Redo();
                    at = Math.Min(made.Count, at + 1);
                }
                else
                {
                    int value = made.Count == 0 ? step : made[^1] + step;
                    made = [.. made.Take(at), value];
                    at = made.Count;
                    job = job.Do(Set("ratedAh", value));
                }
            }

            double? expected = at == 0 ? null : made[at - 1];
            return job.Now.Givens.RatedAh == expected && job.Done.Count == at && job.Undone.Count == made.Count - at;
        }, seed: "0000KNxWiV5f", iter: 300);
    }

    [Fact]
    public void A_value_changed_by_hand_keeps_what_was_read()
    {
        JobSource source = new("s1", "cells.csv", new string('0', 64), SourceKind.Cells, []);
        CellRow first = new() { Label = "T042", CapacityAh = 4.40, Line = 43 };
        CellRow repeat = new() { Label = "T042", CapacityAh = 4.43, Line = 44 };
        CellKey key = new("T042", 2, CellField.CapacityAh);

        Job job = New()
            .Do(JobChanges.AddTable(new JobTable(source, [first, repeat], 0)))
            .Do(JobChanges.Edit(key, new CellEdit(new JobValue.Number(4.5), You))).Now;

        Assert.Equal([4.40, 4.5], job.Rows.Select(row => row.CapacityAh!.Value));
        Assert.Equal(new JobValue.Number(4.43), job.Raw(key));
    }

    private static JobTable Table(string id, params CellRow[] rows) => new(new JobSource(id, $"{id}.csv", new string('0', 64), SourceKind.Cells, []), rows, 0);

    private static JobChange Ah(string label, int test, double ah) =>
        JobChanges.Edit(new CellKey(label, test, CellField.CapacityAh), new CellEdit(new JobValue.Number(ah), You));

    [Fact]
    public void A_value_changed_by_hand_stays_at_its_row_when_tables_come_and_go()
    {
        JobTable first = Table("s1", new CellRow { Label = "B1", CapacityAh = 2.10 }, new CellRow { Label = "B2", CapacityAh = 2.2 });
        JobHistory job = New().Do(JobChanges.AddRow(new CellRow { Label = "B1", CapacityAh = 3.0 })).Do(Ah("B1", 1, 2.95));

        job = job.Do(JobChanges.AddTable(first)).Do(Ah("B2", 1, 2.25));
        Assert.Equal([2.10, 2.25, 2.95], job.Now.Rows.Select(row => row.CapacityAh!.Value));
        Assert.Equal(new JobValue.Number(3.0), job.Now.Raw(new CellKey("B1", 2, CellField.CapacityAh)));

        job = job.Do(JobChanges.AddTable(Table("s2", new CellRow { Label = "B1", CapacityAh = 2.05 })));
        Assert.Equal([2.10, 2.25, 2.05, 2.95], job.Now.Rows.Select(row => row.CapacityAh!.Value));

        job = job.Do(JobChanges.Remove(first.Source));
        Assert.Equal([2.05, 2.95], job.Now.Rows.Select(row => row.CapacityAh!.Value));
        // What was changed in the table went with it, and comes back with it.
        Assert.Equal([new CellKey("B1", 2, CellField.CapacityAh)], job.Now.Edits.Keys);
        Assert.Equal([2.10, 2.25, 2.05, 2.95], job.Undo().Now.Rows.Select(row => row.CapacityAh!.Value));
    }

    // Such an edit stands in files of before: its row is gone, and the next test of that label is not the one it was made in.
    [Fact]
    public void A_value_changed_in_a_row_that_is_gone_falls_on_no_other_row()
    {
        JobHistory job = New().Do(JobChanges.AddRow(new CellRow { Label = "B1", CapacityAh = 3.0 })).Do(Ah("B1", 2, 9));

        job = job.Do(JobChanges.AddRow(new CellRow { Label = "B1", CapacityAh = 2.8 }));

        Assert.Equal([3.0, 2.8], job.Now.Rows.Select(row => row.CapacityAh!.Value));
    }

    [Fact]
    public void Every_column_that_can_be_edited_can_be_read_back()
    {
        JobHistory start = New().Do(JobChanges.AddRow(new CellRow { Label = "T001" }));
        foreach (CellField field in Enum.GetValues<CellField>())
        {
            CellKey key = new("T001", 1, field);
            JobValue value = field switch
            {
                CellField.Date or CellField.LaterDate => new JobValue.Moment(new DateTime(2026, 11, 2)),
                CellField.Slot or CellField.Tray or CellField.Model or CellField.Batch or CellField.Condition => new JobValue.Word("three"),
                _ => new JobValue.Number(3),
            };
            Job edited = start.Do(JobChanges.Edit(key, new CellEdit(value, You))).Now;
            Job asRead = new() { Title = "again", AddedRows = [.. edited.Rows] };

            Assert.Null(edited.Raw(key));
            Assert.Equal(value, asRead.Raw(key));
        }
    }

    [Fact]
    public void A_file_taken_out_never_lends_its_name_to_another()
    {
        JobSource first = new("s1", "a.csv", new string('0', 64), SourceKind.Cells, []);
        JobHistory job = New().Do(JobChanges.AddTable(new JobTable(first, [], 0))).Do(JobChanges.Remove(first));

        Assert.Empty(job.Now.Tables);
        Assert.Equal("s2", job.Now.NextSourceId);
        Assert.Throws<ArgumentException>(() => job.Do(JobChanges.AddTable(new JobTable(first, [], 0))));
    }

    [Fact]
    public void Unknown_stays_unknown()
    {
        JobGivens nothing = JobGivens.None;

        Assert.All(GivenCatalogue.All, entry => Assert.False(nothing.Known.ContainsKey(entry.Key)));
        Assert.Null(nothing.FullV);
        Assert.Null(nothing.TickOf("fuse"));
        Assert.Equal(4.2, nothing.With("chemistry", new Given(new JobValue.Word("NMC"), You)).FullV);
    }
}
