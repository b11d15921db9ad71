using HandsFreeStartup.Reports.Copies.Layout;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>The foot of every first page: who signs, and the checkpoint by which the record can be told from a changed one.</summary>
sealed class SignatureFoot(Ruler ruler, CopyFacts copy, double width)
{
    const double CodeSize = 66;

    public Strip Write()
    {
        double words = 118, left = width - CodeSize - words - 26;
        return Strip.Beside(
            (0, [new Strip(6, (pen, x, y) => pen.Rule(x, y, width, Style.Hair)), .. Signatures(left)]),
            (left + 18, [Strip.Space(6), .. Checkpoint(words)]),
            (width - CodeSize, [Strip.Space(6), Code()]));
    }

    IEnumerable<Strip> Signatures(double room)
    {
        if (!copy.Verdict.IsSigned)
        {
            return
            [
                .. Texts.Paragraph(ruler, T("NOT SIGNED. A signature by hand does not make this a record of a completed start-up."), Style.Strong.In(Style.Alarm), room),
                Strip.Space(15),
                Line(T("Seen by, date"), room),
                Strip.Space(2),
            ];
        }

        double half = (room - 14) / 2;
        return
        [
            .. Texts.Paragraph(ruler, copy.Language.Shown($"Signed in the record by {NameOf(copy.Facts.EndText)}, {copy.Times.Stamp(copy.Facts.Signature!.At)}."), Style.Small, room),
            Strip.Space(27),
            Strip.Beside((0, [Line(T("Technician, date"), half)]), (half + 14, [Line(T("Received by customer, date"), half)])),
        ];
    }

    /// <summary>The foot has one height; a very long name stands in full at the head of the page.</summary>
    static string NameOf(string name) => name.Length <= 60 ? name : $"{name[..60].TrimEnd()} ...";

    string T(string english) => copy.Language.Text(english);

    static Strip Line(string name, double room) => new(Style.Small.LineHeight + 3, (pen, x, y) =>
    {
        pen.Rule(x, y, room, Style.Ink, 0.7);
        pen.Text(name, Style.Small, x, y + 2);
    });

    IEnumerable<Strip> Checkpoint(double room) => copy.Source.Checkpoint is { } checkpoint
        ?
        [
            .. Texts.Paragraph(ruler, T("Checkpoint of the record"), Style.Small, room),
            .. Texts.Paragraph(ruler, checkpoint, Style.Strong, room),
            .. Texts.Paragraph(ruler, T("Give it, or the text of the code beside it, to verify --checkpoint."), Style.Small, room),
        ]
        : Texts.Paragraph(ruler, T("This record has no checkpoint that could be believed."), Style.Strong.In(Style.Alarm), room);

    Strip Code() => new(CodeSize, (pen, x, y) =>
    {
        if (copy.Source.WholeCheckpoint is { } text)
        {
            QrDrawing.Draw(pen, text, x, y, CodeSize);
        }
    });
}
