using HandsFreeStartup.Session;
using Terminal.Gui.App;

namespace HandsFreeStartup.Screen;

/// <summary>Hands moments to the window on the screen's own thread.</summary>
/// <param name="app">The running screen.</param>
/// <param name="window">The window.</param>
public sealed class ScreenDisplay(IApplication app, StartupWindow window) : IDisplay
{
    /// <inheritdoc/>
    public void Show(Moment moment) => app.Invoke(() => window.Show(moment));

    /// <inheritdoc/>
    public void Warn(string text) => app.Invoke(() => window.Warn(text));
}
