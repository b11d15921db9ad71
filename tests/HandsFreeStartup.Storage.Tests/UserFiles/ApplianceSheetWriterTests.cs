using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.UserFiles;

public sealed class ApplianceSheetWriterTests
{
    static Gen<string> Words() =>
        from words in Gen.NonEmptyListOf(Gen.Elements("plate", "a: b", "# c", "\"quoted\"", "back\\slash", "°F", "100 %", "{x}", "[y]", "- dash", "yes", "3.50", "it's", "bell\u0007", "\u202Eright", "half\u0085line"))
        select string.Join(' ', words.Take(25));

    static Gen<ApplianceSheet> Sheets() =>
        from title in Words()
        from seal in Words()
        from source in Words()
        from stages in Gen.Elements(1, 2)
        from modulates in Gen.Elements(true, false)
        from venting in Gen.Elements<VentCategory?>(null, VentCategory.I, VentCategory.II, VentCategory.III, VentCategory.IV)
        from condensing in Gen.Elements<bool?>(null, venting is VentCategory.II or VentCategory.IV)
        from limits in Gen.SubListOf(
            new DeclaredLimit("inlet_pressure", 4.5m, 10.50m, "in. w.c.", source, false),
            new DeclaredLimit("draft", -0.10m, -0.01m, "in. w.c.", source, true),
            new DeclaredLimit("flame_current", 0.1m, null, "µA", source, false) { Weight = LimitWeight.Ought, Unusual = title },
            new DeclaredLimit("co_air_free", null, 100m, "ppm", source, true),
            new DeclaredLimit("fuel_factor", 1.600m, null, "", source, false))
        select new ApplianceSheet("some-sheet", title, "natural-gas", modulates ? 2 : stages, "clockwise", seal, [.. limits])
        {
            IsModulating = modulates,
            Venting = venting,
            IsCondensing = condensing,
            DraftBy = modulates ? DraftBy.Fan : null,
            SeaLevelInput = modulates ? 90_000 : null,
        };

    [Property(MaxTest = 300)]
    public Property What_is_written_is_read_back_the_same() => Prop.ForAll(Sheets().ToArbitrary(), sheet =>
    {
        ApplianceSheet read = UserFile.ReadApplianceSheet(UserFile.Copy("sheet.yaml", ApplianceSheetWriter.Text(sheet, "by questions")));

        Assert.Equal(sheet.Limits.AsEnumerable(), read.Limits);
        Assert.Equal(sheet.Limits.Select(limit => limit.Text), read.Limits.Select(limit => limit.Text));
        Assert.Equal(sheet with { Limits = [] }, read with { Limits = [] });
    });

    [Fact]
    public void A_shipped_sheet_survives_writing_and_reading()
    {
        ApplianceSheet sheet = UserFile.ReadApplianceSheet(ShippedPlans.Copy("furnace-modulating"));

        ApplianceSheet again = UserFile.ReadApplianceSheet(UserFile.Copy("again", ApplianceSheetWriter.Text(sheet, "again")));

        Assert.Equal(sheet.Limits.AsEnumerable(), again.Limits);
    }
}
