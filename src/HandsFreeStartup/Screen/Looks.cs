using Terminal.Gui.Drawing;
using TgAttribute = Terminal.Gui.Drawing.Attribute;

namespace HandsFreeStartup.Screen;

/// <summary>What each look is on this terminal.</summary>
/// <remarks>
/// No meaning hangs on telling red from green: in order is blue, a doubt is yellow, outside is orange, danger is white on dark red. Each pair has a contrast of at least 7 to 1
/// (WCAG 2.1, success criterion 1.4.6). The hues are those of Okabe and Ito, "Color Universal Design" (2008), value from memory; some are darker here for their contrast.
/// </remarks>
/// <param name="hasColours">False where the user asks for none (no-color.org).</param>
/// <param name="isLight">Dark letters on white, for glare.</param>
public sealed class Looks(bool hasColours, bool isLight = false)
{
    static readonly Color Black = new(0, 0, 0), White = new(255, 255, 255), Yellow = new(240, 228, 66), Orange = new(230, 159, 0), SkyBlue = new(86, 180, 233), DarkBlue = new(0, 70, 120),
        DarkRed = new(130, 0, 0), LightGrey = new(200, 200, 200), DarkGrey = new(60, 60, 60), Brown = new(120, 45, 0);

    /// <summary>As the environment asks: the variable NO_COLOR, present and not empty, means none.</summary>
    public static Looks FromEnvironment(bool isLight = false) => new(string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")), isLight);

    /// <summary>Colors and style of a look.</summary>
    public TgAttribute Of(Look look) => !hasColours ? Colourless(look) : isLight ? Light(look) : Dark(look);

    static TgAttribute Dark(Look look) => look switch
    {
        Look.Strong => new(White, Black, TextStyle.Bold),
        Look.Quiet => new(LightGrey, Black),
        Look.Heading => new(Black, LightGrey),
        Look.Caution => new(Yellow, Black, TextStyle.Bold),
        Look.Good => new(SkyBlue, Black),
        Look.Bad => new(Black, Orange, TextStyle.Bold),
        Look.Alarm => new(White, DarkRed, TextStyle.Bold),
        _ => new(White, Black),
    };

    static TgAttribute Light(Look look) => look switch
    {
        Look.Strong => new(Black, White, TextStyle.Bold),
        Look.Quiet => new(DarkGrey, White),
        Look.Heading => new(White, DarkGrey),
        Look.Caution => new(Black, Yellow, TextStyle.Bold),
        Look.Good => new(DarkBlue, White),
        Look.Bad => new(White, Brown, TextStyle.Bold),
        Look.Alarm => new(White, DarkRed, TextStyle.Bold),
        _ => new(Black, White),
    };

    static TgAttribute Colourless(Look look) => new(Color.None, Color.None, look switch
    {
        Look.Strong or Look.Caution => TextStyle.Bold,
        Look.Heading or Look.Bad or Look.Alarm => TextStyle.Reverse,
        _ => TextStyle.None,
    });
}
