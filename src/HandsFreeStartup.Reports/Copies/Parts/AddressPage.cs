using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Reports.Copies.Layout;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>The first page of a customer copy for several appliances at one address: the exceptions of all, then the verdict on each.</summary>
sealed class AddressPage(Ruler ruler, IReadOnlyList<CopyFacts> copies, double width)
{
    readonly Language _language = copies[0].Language;

    static readonly Style Title = new(18, true, Style.Accent);
    static readonly Style Appliance = new(11, true, Style.Ink);
    static readonly Style Verdict = new(11, false, Style.Ink);

    /// <summary>Everything in its order.</summary>
    /// <param name="emergency">What to do in danger; it stands right below the names.</param>
    public IEnumerable<Strip> Write(IEnumerable<Strip> emergency)
    {
        string[] exceptions = [.. copies.SelectMany(copy => copy.Exceptions.Select(exception => $"{copy.Plan.Appliance.Title}: {Sentences.Of(exception, copy.Times, copy.Language)}"))];
        JobRecord[] jobs = [.. copies.Select(copy => copy.Facts)];
        JobRecord? walk = WithOthers.WalkOf(jobs);
        return
        [
            .. Texts.Alarming(ruler, Sentences.ExceptionsTitle(exceptions.Length, _language), exceptions, Style.Body.At(9.6), width),
            .. Texts.Paragraph(ruler, _language.Shown($"{copies.Count} appliances at one address"), Title, width),
            .. Texts.Paragraph(ruler, string.Join("; ", new[] { copies[0].Plan.Site.Customer, copies[0].Plan.Site.Address }.Where(text => text.Length > 0)), Verdict, width),
            .. emergency,
            .. Texts.Alarming(ruler, _language.Text("To be looked at"), walk is null ? [_language.Text("The rooms were not walked with all of these appliances running. Have carbon monoxide measured in them while everything burns.")] : [], Style.Body, width),
            .. copies.SelectMany(Of),
            .. walk is null ? [] : Texts.Paragraph(ruler, _language.Shown($"Carbon monoxide in the rooms was measured last with all of them running; those numbers stand on the page of {walk.Plan.Appliance.Title}. Rooms on the other pages were measured before everything ran."), Style.Body, width),
        ];
    }

    IEnumerable<Strip> Of(CopyFacts copy)
    {
        bool isAlarm = !copy.Verdict.IsSigned || copy.Verdict.Dangers.Count > 0;
        return
        [
            Strip.Space(6),
            .. Texts.Paragraph(ruler, $"{copy.Plan.Appliance.Title}: {copy.Verdict.Word.ToLowerInvariant()}", isAlarm ? Appliance.In(Style.Alarm) : Appliance, width).Select(line => line with { KeepsWithNext = true }),
            .. Texts.Paragraph(ruler, copy.Verdict.Sentence, Verdict, width),
        ];
    }
}
