using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Screen;

/// <summary>What the tool told, the newest at the bottom; nothing overwrites it, and it can be scrolled back.</summary>
static class MessageList
{
    /// <summary>The rows that fit.</summary>
    public static IReadOnlyList<ScreenRow> Of(ConsoleState state, int width, int height)
    {
        int back = Math.Clamp(state.Back, 0, Math.Max(0, state.Messages.Count - 1));
        List<ScreenRow> rows = [];
        for (int at = state.Messages.Count - 1 - back; at >= 0 && rows.Count < height; at--)
        {
            ShownLine message = state.Messages[at];
            rows.InsertRange(0, TextLines.Wrap(message.Text, width - 2, indent: 2).Select(line => ScreenRow.Of(line, message.Look)));
        }

        return rows.Count <= height ? rows
            // The beginning of what is newest comes first where it does not fit as a whole.
            : back == 0 && Newest(state, width) is { } newest && newest.Count > height ? Pages.Fit([state.Messages[^1]], width, height, state.Page, indent: 2)
            : [.. rows.TakeLast(height)];
    }

    static IReadOnlyList<string> Newest(ConsoleState state, int width) => TextLines.Wrap(state.Messages[^1].Text, width - 2, indent: 2);
}
