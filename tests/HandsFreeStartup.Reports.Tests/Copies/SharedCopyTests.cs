using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>One customer copy for several appliances at one address.</summary>
[Trait("Speed", "Fast")]
public sealed class SharedCopyTests
{
    const string NotWalked = "The rooms were not walked with all of these appliances running.";

    [Fact]
    public void Verdicts_of_all_stand_first_then_each_appliance_has_its_own_page_and_the_advice_stands_once()
    {
        using PdfPages pdf = new(StartupCopies.Customer([First(), Second()], Paper.A4));

        Assert.Contains("2 appliances at one address Owner (invented); 1 Mill Lane (invented)", pdf.Texts[0], StringComparison.Ordinal);
        Assert.Contains("Cellar furnace: signed", pdf.Texts[0], StringComparison.Ordinal);
        Assert.Contains("Attic furnace: signed", pdf.Texts[0], StringComparison.Ordinal);
        Assert.Contains("those numbers stand on the page of Attic furnace", pdf.Texts[0], StringComparison.Ordinal);
        Assert.DoesNotContain(NotWalked, pdf.Text, StringComparison.Ordinal);
        Assert.Contains("Cellar furnace", pdf.Texts[1], StringComparison.Ordinal);
        Assert.DoesNotContain("Attic furnace", pdf.Texts[1], StringComparison.Ordinal);
        Assert.Contains("At the same address", pdf.Texts[2], StringComparison.Ordinal);
        Assert.Single(pdf.Texts, text => text.Contains("What to watch for", StringComparison.Ordinal));
        Assert.All(pdf.Texts.Select((text, index) => (text, index)), page => Assert.Contains($"Page {page.index + 1} of {pdf.Texts.Count}", page.text, StringComparison.Ordinal));
    }

    [Fact]
    public void Rooms_that_were_never_walked_with_everything_running_are_named_first()
    {
        using PdfPages pdf = new(StartupCopies.Customer([First(), First("apart", "Attic furnace")], Paper.A4));

        Assert.Contains(NotWalked, pdf.Texts[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_walk_beside_one_appliance_proves_nothing_about_a_third()
    {
        CopySource third = First("third", "Shop heater");

        using PdfPages pdf = new(StartupCopies.Customer([First(), Second(), third], Paper.A4));

        Assert.Contains(NotWalked, pdf.Texts[0], StringComparison.Ordinal);
    }

    [Fact]
    public void The_exceptions_of_each_stand_on_the_first_page_under_its_name()
    {
        CopySource stopped = Signed("first", "Cellar furnace", job => job.Order(CommandWord.SkipStep).Dictate("panel is painted shut"));

        using PdfPages pdf = new(StartupCopies.Customer([stopped, Second()], Paper.Letter));

        Assert.StartsWith("first, second Customer copy for the people in the house Exceptions (1): read these first · Cellar furnace: ", pdf.Texts[0], StringComparison.Ordinal);
        Assert.Contains("panel is painted shut", pdf.Texts[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_signed_is_said_in_large_letters_on_the_shared_pages_and_on_its_own_but_not_on_those_of_the_other()
    {
        CopySource whole = Second();
        CopySource unfinished = whole with { Events = [.. whole.Events.SkipLast(2)] };

        using PdfPages pdf = new(StartupCopies.Customer([First(), unfinished], Paper.A4));

        Assert.Equal([true, false, true, true], pdf.Texts.Select(text => text.Contains("NOT SIGNED", StringComparison.Ordinal)));
        Assert.Contains(NotWalked, pdf.Texts[0], StringComparison.Ordinal);
        Assert.Contains("Do not use the furnace", pdf.Texts[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void One_job_alone_has_the_copy_that_it_always_had() =>
        Assert.Equal(StartupCopies.Customer(First(), Paper.A4), StartupCopies.Customer([First()], Paper.A4));

    [Fact]
    public void The_narrow_copy_names_what_ran_beside_it() =>
        Assert.Contains("it ran while the rooms were walked", string.Join(' ', NarrowCopy.Of(Second(), 48).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);

    static CopySource First(string id = "first", string title = "Cellar furnace") => Signed(id, title, job => job.Order(CommandWord.Done));

    static CopySource Second() => Signed("second", "Attic furnace", job => job.Order(CommandWord.Done), new ApplianceBeside("first", "Cellar furnace"));

    static CopySource Signed(string id, string title, Func<ScriptedJob, ScriptedJob> look, params ApplianceBeside[] beside)
    {
        StartupPlan plan = Plan(title, beside);
        ScriptedJob job = look(new ScriptedJob(plan: plan, jobId: id, beside: beside).Answer(AnswerWord.No));
        job = beside.Length > 0 ? job.Answer(AnswerWord.Yes) : job;
        job.Read("room_co", 1m).Order(CommandWord.Next).Order(CommandWord.Finish).Answer(AnswerWord.Confirm);
        job = job.Events[^1] is StartupSigned ? job : job.Answer(AnswerWord.Confirm);
        Assert.IsType<StartupSigned>(job.Events[^1]);
        return CopiesTests.Source(plan, job.Events);
    }

    static StartupPlan Plan(string title, ApplianceBeside[] beside) => StartupPlan.From(
        new Checklist("rooms", "1", "Short start-up",
        [
            ScriptedJob.Plan.Steps.Single(step => step.Id == "smell"),
            ScriptedJob.Plan.Steps.Single(step => step.Id == "look"),
            new Step { Id = "room-walk", Section = "All", Title = "CO", Kind = StepKind.Walk, Do = "Walk to the {room}.", Readings = [new("room_co", "room_co")] },
            ScriptedJob.Plan.Steps.Single(step => step.Kind == StepKind.Sign),
        ],
        [new DeclaredLimit("room_co", null, 9, "ppm", "a rule (invented)", true)]),
        ScriptedJob.Plan.Appliance with { Title = title },
        ScriptedJob.Plan.Site with { Instruments = [new InstrumentUncertainty("room_co", 3m, 10m, "invented")] },
        others: [.. beside.Select(one => one.Title)]);
}
