using HandsFreeStartup.Running;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;
using Terminal.Gui.App;
using Terminal.Gui.Input;

namespace HandsFreeStartup.Review;

/// <summary>Walks through the findings of one record on the screen.</summary>
static class ReviewScreen
{
    /// <summary>Runs until the lead leaves.</summary>
    /// <returns>The record as it stands then.</returns>
    public static ReviewedRecord Run(ReviewedRecord record, string lead, TimeProvider clock)
    {
        ReviewedRecord now = record;
        using ClipPlayer player = new(record.Path, PlayCommand.Find());
        using IApplication app = Application.Create().Init();
        app.Keyboard.KeyBindings.Remove(Key.Esc);
        using ReviewWindow window = new(record.Review, lead, Looks.FromEnvironment())
        {
            Play = player.Play,
            Leave = () => app.RequestStop(),
        };
        window.GiveWord = (name, outcome, remark) =>
        {
            try
            {
                string said = LeadsWord.Record(record.Path, name, outcome, remark, clock);
                now = ReviewedRecord.Read(record.Path);
                window.Show(now.Review);
                return said;
            }
            catch (Exception error) when (error is LogException or WrongUseException or ChecklistFileException)
            {
                return error.Message;
            }
        };
        app.Keyboard.KeyDown += (_, key) => key.Handled = ReferenceEquals(app.TopRunnableView, window) && window.Take(key);
        app.Run(window);
        return now;
    }
}
