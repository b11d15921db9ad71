using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Simulation.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests;

/// <summary>A technician who does everything right, led by the shipped procedure, at every furnace and with every fault.</summary>
public sealed class IdealTechnicianTests
{
    public static TheoryData<string, string> Healthy
    {
        get
        {
            TheoryData<string, string> rows = [];
            foreach (string sheet in Made.Sheets)
            {
                foreach (string occasion in (string[])["new", "repair", "seasonal"])
                {
                    rows.Add(sheet, occasion);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Healthy))]
    public void A_healthy_furnace_is_signed(string sheet, string occasion)
    {
        IdealRun loop = new IdealRun(Furnace.From(Made.Plan(sheet, occasion), [], 7)).Run();

        Assert.True(loop.Procedure.IsSigned, string.Join(" | ", loop.Done.TakeLast(30)));
        Assert.Empty(loop.Bench.Hands.Open);
    }

    [Fact]
    public void The_short_checklist_of_the_demonstration_is_signed_too()
    {
        IdealRun loop = new IdealRun(Furnace.From(Storage.Tests.Support.ShippedPlans.Plan("two-stage-natural-gas", "demo-furnace", "demo-site", ""), [], 7)).Run();

        Assert.True(loop.Procedure.IsSigned, string.Join(" | ", loop.Done.TakeLast(30)));
    }

    public static TheoryData<Fault, string> Faulty
    {
        get
        {
            TheoryData<Fault, string> rows = [];
            foreach (Fault fault in Enum.GetValues<Fault>())
            {
                foreach (string sheet in Made.Sheets.Where(sheet => Furnace.WhyNot(fault, Made.Plan(sheet)) is null))
                {
                    rows.Add(fault, sheet);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Faulty))]
    public void A_dangerous_furnace_is_never_signed_with_its_fault(Fault fault, string sheet)
    {
        IdealRun loop = new IdealRun(Made.Furnace(sheet, 7, fault)).Run();

        bool isRight = loop.Bench.Hands.PutRight.Contains(fault) || (fault == Fault.RegulatorHigh && loop.Log.OfType<AdjustmentMade>().Any());
        Assert.True(!loop.Procedure.IsSigned || isRight || !NamedFault.Of(fault).IsDangerous, string.Join(" | ", loop.Done.TakeLast(30)));
        Assert.True(loop.Procedure.IsSigned == (NamedFault.Of(fault).Remedy is not null), $"signed: {loop.Procedure.IsSigned}; {string.Join(" | ", loop.Done.TakeLast(30))}");
    }
}
