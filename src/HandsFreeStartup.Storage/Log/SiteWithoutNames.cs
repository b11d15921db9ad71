using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace HandsFreeStartup.Storage.Log;

/// <summary>What remains of a site's file when nobody may be found by it any more: altitude, rooms, instruments. Comments go too.</summary>
static class SiteWithoutNames
{
    /// <summary>Keys whose values tell whose house it is; a new key of that sort belongs here.</summary>
    public static ImmutableArray<string> PersonalKeys { get; } = ["id", "title", "customer", "address"];

    /// <summary>The file's text with those values removed; empty where it is no readable file.</summary>
    public static string Of(string text)
    {
        try
        {
            YamlStream file = [];
            file.Load(new StringReader(text));
            if (file.Documents is not [{ RootNode: YamlMappingNode map }])
            {
                return "";
            }

            foreach (YamlNode key in map.Children.Keys.ToList())
            {
                if (key is YamlScalarNode { Value: { } name } && PersonalKeys.Contains(name))
                {
                    map.Children[key] = new YamlScalarNode(name == "id" ? "removed" : PersonalParts.Removed) { Style = ScalarStyle.DoubleQuoted };
                }
            }

            using StringWriter kept = new() { NewLine = "\n" };
            file.Save(kept, assignAnchors: false);
            return kept.ToString();
        }
        catch (Exception error) when (error is YamlException or InvalidOperationException)
        {
            return "";
        }
    }
}
