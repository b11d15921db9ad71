using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A value of a YAML file with the place where it stands.</summary>
abstract record YamlValue(Place Place);

sealed record YamlText(Place Place, string Text) : YamlValue(Place);

sealed record YamlList(Place Place, ImmutableArray<YamlValue> Items) : YamlValue(Place);

sealed record YamlMap(Place Place, ImmutableArray<(YamlText Key, YamlValue Value)> Entries) : YamlValue(Place);

/// <summary>Reads YAML into values that know their place. Own tree, because the library's one stops at the first repeated key.</summary>
sealed class YamlTree
{
    const int DeepestNesting = 20;

    readonly Findings _findings;
    readonly Parser _parser;
    int _depth;

    YamlTree(string text, Findings findings)
    {
        _findings = findings;
        _parser = new Parser(new StringReader(text));
    }

    /// <summary>The file's one map, or null after a finding.</summary>
    public static YamlMap? Read(string text, Findings findings)
    {
        try
        {
            return new YamlTree(text, findings).Document();
        }
        catch (YamlException error)
        {
            findings.Add(At(error.Start), $"This is no readable YAML: {error.Message.TrimEnd('.')}. "
                + "Check the indentation, and put a text that holds ': ' or ' #' or begins with a special character into double quotes.");
            return null;
        }
    }

    YamlMap? Document()
    {
        _parser.Consume<StreamStart>();
        if (!_parser.TryConsume<DocumentStart>(out _))
        {
            _findings.Add(new Place(1, 1), "The file is empty. Expected keys with their values, such as 'id: my-file'.");
            return null;
        }

        YamlValue value = Value();
        _parser.Consume<DocumentEnd>();
        if (_parser.Accept<DocumentStart>(out DocumentStart? second))
        {
            _findings.Add(At(second.Start), "A second document begins here. Expected one; remove the line '---' and what follows.");
        }

        if (value is not YamlMap map)
        {
            _findings.Add(value.Place, "Expected keys with their values, such as 'id: my-file'.");
            return null;
        }
        return map;
    }

    YamlValue Value()
    {
        if (_parser.TryConsume<AnchorAlias>(out AnchorAlias? alias))
        {
            _findings.Add(At(alias.Start), "References (*) are not used here. Write the value itself.");
            return new YamlText(At(alias.Start), "*");
        }

        NodeEvent node = _parser.Accept<NodeEvent>(out NodeEvent? found) ? found : throw new YamlException("nothing where a value was expected");
        if (++_depth > DeepestNesting)
        {
            throw new YamlException(node.Start, node.End, "it is nested too deeply");
        }

        YamlValue value = Value(node);
        _depth--;
        return value;
    }

    YamlValue Value(NodeEvent node)
    {
        Place place = At(node.Start);
        if (!node.Anchor.IsEmpty || !node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
        {
            _findings.Add(place, "Anchors (&) and tags (!) are not used here. Write the value itself.");
        }

        if (_parser.TryConsume<Scalar>(out Scalar? scalar))
        {
            return new YamlText(place, scalar.Value);
        }

        if (_parser.TryConsume<SequenceStart>(out _))
        {
            List<YamlValue> items = [];
            while (!_parser.TryConsume<SequenceEnd>(out _))
            {
                items.Add(Value());
            }
            return new YamlList(place, [.. items]);
        }

        _parser.Consume<MappingStart>();
        return Map(place);
    }

    YamlMap Map(Place place)
    {
        List<(YamlText, YamlValue)> entries = [];
        while (!_parser.TryConsume<MappingEnd>(out _))
        {
            YamlValue key = Value();
            YamlValue value = Value();
            if (key is YamlText text)
            {
                entries.Add((text, value));
            }
            else
            {
                _findings.Add(key.Place, "Expected a key, a single word before ':'.");
            }
        }
        return new YamlMap(place, [.. entries]);
    }

    static Place At(in Mark mark) => new((int)mark.Line, (int)mark.Column);
}
