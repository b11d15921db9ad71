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

    const string Remedy = "Check the indentation, and put a text that holds ': ' or ' #' or begins with a special character into double quotes.";

    readonly Findings _findings;
    readonly Parser _parser;
    readonly Stack<(Place Place, char Bracket)> _openBrackets = [];
    int _depth;

    YamlTree(string text, Findings findings)
    {
        _findings = findings;
        _parser = new Parser(new StringReader(text));
    }

    /// <summary>The file's one map, or null after a finding.</summary>
    public static YamlMap? Read(string text, Findings findings)
    {
        YamlTree tree = new(text, findings);
        try
        {
            return tree.Document();
        }
        catch (InvalidOperationException)
        {
            // The library loses its place where a bracket is not closed before the next line.
            (Place place, char bracket) = tree._openBrackets.TryPeek(out (Place, char) open) ? open : FirstBracket(text, tree._parser.Current?.End ?? Mark.Empty);
            findings.Add(place, $"The '{bracket}' that begins here is not closed. Write '{Closing(bracket)}' where it ends, and a comma between its parts.");
            return null;
        }
        catch (YamlException error)
        {
            string bracket = tree._openBrackets.TryPeek(out (Place Place, char Bracket) open)
                ? FormattableString.Invariant($"Look whether the '{open.Bracket}' of line {open.Place.Line} is closed by '{Closing(open.Bracket)}'. ")
                : "";
            findings.Add(At(error.Start), $"This is no readable YAML: {error.Message.TrimEnd('.')}. {bracket}{Remedy}");
            return null;
        }
        catch (Exception error) when (error is ArgumentException or FormatException or OverflowException)
        {
            // The library checks tags, directives and escapes by other means than its own errors, which do not know their place.
            findings.Add(At(tree._parser.Current?.End ?? Mark.Empty), $"This is no readable YAML: a tag (!), a directive (%) or an escape (\\) that comes here is none. {Remedy}");
            return null;
        }
    }

    /// <summary>The first bracket that opens after a place; the place itself, as if one stood there, where none does.</summary>
    static (Place Place, char Bracket) FirstBracket(string text, Mark after)
    {
        int at = text.IndexOfAny(['{', '['], (int)Math.Min(after.Index, text.Length));
        if (at < 0)
        {
            return (At(after), '{');
        }

        int lineStart = text.LastIndexOf('\n', at) + 1;
        return (new Place(text.AsSpan(0, at).Count('\n') + 1, at - lineStart + 1), text[at]);
    }

    static char Closing(char bracket) => bracket == '{' ? '}' : ']';

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

        if (node is SequenceStart sequence)
        {
            Opened(sequence.Style == SequenceStyle.Flow, place, '[');
            _parser.Consume<SequenceStart>();
            List<YamlValue> items = [];
            while (!_parser.TryConsume<SequenceEnd>(out _))
            {
                items.Add(Value());
            }

            Closed(sequence.Style == SequenceStyle.Flow);
            return new YamlList(place, [.. items]);
        }

        bool isFlow = node is MappingStart { Style: MappingStyle.Flow };
        Opened(isFlow, place, '{');
        _parser.Consume<MappingStart>();
        YamlMap map = Map(place);
        Closed(isFlow);
        return map;
    }

    void Opened(bool isFlow, Place place, char bracket)
    {
        if (isFlow)
        {
            _openBrackets.Push((place, bracket));
        }
    }

    void Closed(bool isFlow)
    {
        if (isFlow)
        {
            _openBrackets.Pop();
        }
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
