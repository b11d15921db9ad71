using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.NewAppliance;

/// <summary>Asks for an appliance sheet, question by question.</summary>
static class SheetInterview
{
    /// <summary>Stands at the top of such a sheet.</summary>
    public const string Comment = "Written by questions. Look through it beside the rating plate and the maker's instructions; they decide.";

    /// <summary>The sheet; null where the answers ended before it was complete.</summary>
    public static ApplianceSheet? Ask(Conversation conversation, Draft draft)
    {
        Stack<Draft> before = [];
        while (!draft.IsComplete)
        {
            if (conversation.Line(draft.Question) is not { } line || line.Trim() == "stop")
            {
                return null;
            }

            switch (line.Trim())
            {
                case "back":
                    draft = before.TryPop(out Draft? earlier) ? earlier : draft;
                    continue;
                case "why":
                    conversation.Reply($"  {draft.Why}");
                    continue;
            }

            Draft? next = draft.With(line, out string said);
            if (said.Length > 0)
            {
                // What is wrong is said; a remark on what was taken would only keep the next question waiting.
                (next is null ? (Action<string>)conversation.Reply : conversation.Tell)(said);
            }

            if (next is not null)
            {
                before.Push(draft);
                draft = next;
            }
        }

        return draft.Sheet;
    }
}
