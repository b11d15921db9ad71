using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A firm's small file laid over a whole checklist: it changes keys of single steps and adds steps and limits; nothing is taken away.</summary>
/// <param name="findings">Where mistakes of the small file go.</param>
sealed class ChecklistOverlay(Findings findings)
{
    /// <summary>The key that makes a file one.</summary>
    public const string Extends = "extends";

    const string AfterStep = "after_step";
    static readonly ImmutableArray<string> Keys = [Extends, "id", "version", "title", "steps", "limits", "prompts"];

    /// <summary>What guards in a step of the checklist below stays as it is.</summary>
    static readonly ImmutableArray<string> Guarding = ["kind", "safety_stop", "question", "opens", "closes", "proves", "again_after", "only_for"];

    /// <summary>Both together, as one checklist.</summary>
    /// <param name="below">The whole checklist, without mistakes.</param>
    /// <param name="above">The small file.</param>
    public YamlMap Lay(YamlMap below, YamlMap above)
    {
        foreach ((YamlText key, _) in above.Entries.Where(entry => !Keys.Contains(entry.Key.Text)))
        {
            findings.Add(key.Place, $"Unknown key '{TextLength.Shortened(key.Text)}' in a file that extends a checklist.{Nearest.Hint(key.Text, Keys)}");
        }

        ImmutableArray<YamlValue> sections = Items(below, "sections");
        foreach (YamlMap step in Items(above, "steps").OfType<YamlMap>())
        {
            sections = [.. Lay(sections, step)];
        }

        return below with
        {
            Entries =
            [
                .. below.Entries.Select(entry => (entry.Key, entry.Key.Text switch
                {
                    "sections" => new YamlList(entry.Value.Place, sections),
                    "limits" => new YamlList(entry.Value.Place, [.. Limits(entry.Value, Items(above, "limits"))]),
                    "prompts" when Value(above, "prompts") is YamlMap more && entry.Value is YamlMap prompts => Merged(prompts, more, []),
                    "id" or "version" or "title" => Value(above, entry.Key.Text) ?? entry.Value,
                    _ => entry.Value,
                })),
            ],
        };
    }

    /// <summary>The text of a map, from which it is read again as the same.</summary>
    public static string Text(YamlMap map)
    {
        StringBuilder text = new();
        Write(text, map, 0);
        return text.ToString();
    }

    /// <summary>A step that is there is changed; another one is put in after the one that it names.</summary>
    IEnumerable<YamlValue> Lay(ImmutableArray<YamlValue> sections, YamlMap step)
    {
        string id = TextOf(step, "id");
        string after = TextOf(step, AfterStep);
        bool isThere = sections.OfType<YamlMap>().SelectMany(section => Items(section, "steps")).OfType<YamlMap>().Any(known => TextOf(known, "id") == id);
        string place = isThere ? id : after;
        bool isFound = false;
        YamlValue[] laid =
        [
            .. sections.Select(section => section is not YamlMap map ? section : map with
            {
                Entries =
                [
                    .. map.Entries.Select(entry => entry.Key.Text != "steps" || entry.Value is not YamlList list ? entry : (entry.Key, list with
                    {
                        Items =
                        [
                            .. list.Items.SelectMany(known => known is not YamlMap own || TextOf(own, "id") != place ? [known]
                                : Found(ref isFound) && isThere ? (YamlValue[])[Merged(own, step, Guarding)]
                                : [known, step with { Entries = step.Entries.RemoveAll(one => one.Key.Text == AfterStep) }]),
                        ],
                    })),
                ],
            }),
        ];
        if (!isFound)
        {
            findings.Add(step.Place, after.Length == 0
                ? $"The checklist below has no step '{id}'. Name one of its steps by 'id', or say with '{AfterStep}' after which one this new step comes."
                : $"The checklist below has no step '{after}' after which this one could come. Look at its ids.");
        }

        return laid;
    }

    static bool Found(ref bool isFound) => isFound = true;

    YamlMap Merged(YamlMap below, YamlMap above, ImmutableArray<string> kept)
    {
        foreach ((YamlText key, _) in above.Entries.Where(entry => kept.Contains(entry.Key.Text)))
        {
            findings.Add(key.Place, $"'{key.Text}' guards in the checklist below and stays as it is there. Leave it out, or write a checklist of your own.");
        }

        return below with
        {
            Entries = [.. below.Entries.Select(entry => (entry.Key, Value(above, entry.Key.Text) ?? entry.Value)), .. above.Entries.Where(entry => Value(below, entry.Key.Text) is null)],
        };
    }

    IEnumerable<YamlValue> Limits(YamlValue below, ImmutableArray<YamlValue> above)
    {
        ImmutableArray<YamlValue> own = below is YamlList list ? list.Items : [];
        foreach (YamlMap limit in above.OfType<YamlMap>().Where(limit => own.OfType<YamlMap>().Any(known => TextOf(known, "name") == TextOf(limit, "name"))))
        {
            findings.Add(limit.Place, $"The limit '{TextOf(limit, "name")}' stands in the checklist below. A sheet may make it stricter for its furnace.");
        }

        return own.Concat(above);
    }

    static ImmutableArray<YamlValue> Items(YamlMap map, string key) => Value(map, key) is YamlList list ? list.Items : [];

    static YamlValue? Value(YamlMap map, string key) => map.Entries.FirstOrDefault(entry => entry.Key.Text == key).Value;

    static string TextOf(YamlMap map, string key) => Value(map, key) is YamlText text ? text.Text : "";

    static void Write(StringBuilder text, YamlMap map, int indent)
    {
        foreach ((YamlText key, YamlValue value) in map.Entries)
        {
            text.Append(' ', indent).Append(key.Text).Append(':');
            Write(text, value, indent);
        }
    }

    static void Write(StringBuilder text, YamlValue value, int indent)
    {
        switch (value)
        {
            case YamlMap map:
                text.Append('\n');
                Write(text, map, indent + 2);
                break;
            case YamlList list:
                text.Append('\n');
                foreach (YamlValue item in list.Items)
                {
                    text.Append(' ', indent + 2).Append('-');
                    Write(text, item, indent + 2);
                }

                break;
            case YamlText plain:
                text.Append(CultureInfo.InvariantCulture, $" {ApplianceSheetWriter.Quoted(plain.Text)}\n");
                break;
        }
    }
}
