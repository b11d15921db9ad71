using Terminal.Gui.Drawing;
using TgAttribute = Terminal.Gui.Drawing.Attribute;

namespace HandsFreeStartup.Screen;

/// <summary>What each look is on this terminal.</summary>
/// <param name="hasColours">False where the user asks for none (no-color.org).</param>
public sealed class Looks(bool hasColours)
{
    /// <summary>As the environment asks: the variable NO_COLOR, present and not empty, means none.</summary>
    public static Looks FromEnvironment() => new(string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")));

    /// <summary>Colours and style of a look.</summary>
    public TgAttribute Of(Look look) => hasColours ? Coloured(look) : Colourless(look);

    static TgAttribute Coloured(Look look) => look switch
    {
        Look.Strong => new(StandardColor.White, StandardColor.Black, TextStyle.Bold),
        Look.Quiet => new(StandardColor.DarkGray, StandardColor.Black),
        Look.Heading => new(StandardColor.Black, StandardColor.LightGray),
        Look.Caution => new(StandardColor.Yellow, StandardColor.Black, TextStyle.Bold),
        Look.Good => new(StandardColor.LightGreen, StandardColor.Black),
        Look.Bad => new(StandardColor.White, StandardColor.DarkRed, TextStyle.Bold),
        Look.Alarm => new(StandardColor.White, StandardColor.DarkRed, TextStyle.Bold),
        _ => new(StandardColor.White, StandardColor.Black),
    };

    static TgAttribute Colourless(Look look) => new(Color.None, Color.None, look switch
    {
        Look.Strong or Look.Caution => TextStyle.Bold,
        Look.Heading or Look.Bad or Look.Alarm => TextStyle.Reverse,
        _ => TextStyle.None,
    });
}
