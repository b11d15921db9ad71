using System.Collections.Immutable;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Reads the keys of one map. What is missing or wrong becomes a finding and a harmless stand-in, so that reading goes on.</summary>
sealed class EntryReader
{
    /// <summary>More than any furnace, house or checklist has of anything.</summary>
    const int MostItems = 200;

    /// <summary>What is told in whole sentences; everything else is a name or a title.</summary>
    static readonly ImmutableHashSet<string> LongTexts = ["'do'", "'why'", "'caution'", "'otherwise'", "'text'"];

    readonly Dictionary<string, YamlValue> _values = [];
    readonly Findings _findings;
    readonly string _what;

    /// <param name="value">What should be a map.</param>
    /// <param name="findings">Where mistakes go.</param>
    /// <param name="what">The map in plain words with article, for instance "a step".</param>
    /// <param name="keys">All keys that it may have.</param>
    public EntryReader(YamlValue value, Findings findings, string what, params string[] keys)
    {
        _findings = findings;
        _what = what;
        Place = value.Place;
        findings.Shape?.Map(value, what, keys);
        if (value is not YamlMap map)
        {
            findings.Add(value.Place, $"Expected {what} with keys among {string.Join(", ", keys)}.");
            IsMap = false;
            return;
        }

        foreach ((YamlText key, YamlValue entry) in map.Entries)
        {
            if (!keys.Contains(key.Text))
            {
                findings.Add(key.Place, $"Unknown key '{TextLength.Shortened(key.Text)}' in {what}.{Nearest.Hint(key.Text, keys)}");
            }
            else if (!_values.TryAdd(key.Text, entry))
            {
                findings.Add(key.Place, $"The key '{TextLength.Shortened(key.Text)}' stands twice in {what}. Keep one.");
            }
        }
    }

    /// <summary>Where the map begins.</summary>
    public Place Place { get; }

    /// <summary>False when there is no map at all; that has been reported, and missing keys are not reported again.</summary>
    public bool IsMap { get; } = true;

    public bool Has(string key) => _values.ContainsKey(key);

    /// <summary>Where the value of <paramref name="key"/> stands, or the map where there is none.</summary>
    public Place At(string key) => _values.TryGetValue(key, out YamlValue? value) ? value.Place : Place;

    /// <summary>Where the item of that index of the list <paramref name="key"/> stands.</summary>
    public Place At(string key, int index) =>
        _values.TryGetValue(key, out YamlValue? value) && value is YamlList list && index < list.Items.Length ? list.Items[index].Place : At(key);

    public void Report(string key, string message) => _findings.Add(At(key), message);

    /// <summary>A mistake only of a file with which a job is to begin.</summary>
    public void ReportForNew(string key, string message) => _findings.AddForNew(At(key), message);

    /// <summary>The same of one of several entries under the key.</summary>
    public void ReportForNew(string key, int index, string message) => _findings.AddForNew(At(key, index), message);

    public void Report(string key, int index, string message) => _findings.Add(At(key, index), message);

    /// <summary>A text that must be there; <paramref name="remedy"/> is added to the finding where it is missing.</summary>
    public string Text(string key, string remedy = "")
    {
        if (TextOrNull(key) is { } text)
        {
            return text;
        }

        ReportMissing(key, remedy);
        return "";
    }

    /// <summary>The text as it stands, which may be empty; null where the key is missing or no text.</summary>
    public string? RawTextOrNull(string key) => _values.TryGetValue(key, out YamlValue? value) && value is YamlText text ? text.Text : null;

    public string? TextOrNull(string key)
    {
        _findings.Shape?.Text(_what, key);
        return _values.TryGetValue(key, out YamlValue? value) ? TextOf(value, $"'{key}'") : null;
    }

    /// <summary>A text out of a fixed set.</summary>
    public string Choice(string key, IReadOnlyCollection<string> choices)
    {
        _findings.Shape?.Choice(_what, key, choices);
        string text = Text(key);
        if (text.Length > 0 && !choices.Contains(text))
        {
            Report(key, $"'{text}' is not known as {key}.{Nearest.Hint(text, choices)}");
        }
        return text;
    }

    /// <summary>One text or several out of a fixed set; none where the key is missing.</summary>
    public ImmutableArray<string> Choices(string key, IReadOnlyCollection<string> choices)
    {
        _findings.Shape?.Choices(_what, key, choices);
        if (!Has(key))
        {
            return [];
        }

        ImmutableArray<string> texts = _values[key] is YamlList ? Texts(key) : [Text(key)];
        for (int i = 0; i < texts.Length; i++)
        {
            if (texts[i].Length > 0 && !choices.Contains(texts[i]))
            {
                Report(key, i, $"'{texts[i]}' is not known as {key}.{Nearest.Hint(texts[i], choices)}");
            }
        }
        return [.. texts.Where(choices.Contains)];
    }

    /// <summary>A name for use in files: lower-case letters, digits and hyphens.</summary>
    public string Id(string key)
    {
        string text = Text(key);
        if (text.Length > 0 && !text.All(letter => letter is '-' or >= 'a' and <= 'z' or >= '0' and <= '9'))
        {
            Report(key, $"'{text}' cannot be {key}. Expected lower-case letters, digits and hyphens, such as 'close-gas-port'.");
        }
        return text;
    }

    public bool Flag(string key) => Has(key) && Choice(key, ["true", "false"]) == "true";

    public decimal? Number(string key)
    {
        _findings.Shape?.Number(_what, key);
        if (TextOrNull(key) is not { } text)
        {
            return null;
        }

        if (TypedNumber.Read(text, out string reason, "3.5") is { } number)
        {
            return number;
        }

        Report(key, $"{reason}. Numbers stand here without a unit.");
        return null;
    }

    /// <summary>A number that must be there and lie between two bounds, both included.</summary>
    public decimal Number(string key, decimal lowest, decimal highest)
    {
        _findings.Shape?.Number(_what, key, lowest, highest);
        ReportMissing(key, FormattableString.Invariant($" Expected a number from {lowest} to {highest}."));
        if (Number(key) is { } number)
        {
            if (number < lowest || number > highest)
            {
                Report(key, FormattableString.Invariant($"{key} {number} is out of range. Expected {lowest} to {highest}."));
            }
            return number;
        }
        return lowest;
    }

    /// <summary>The items of a list; none where the key is missing and not <paramref name="isRequired"/>.</summary>
    public ImmutableArray<T> Each<T>(string key, bool isRequired, Func<YamlValue, T> read)
    {
        if (!_values.TryGetValue(key, out YamlValue? value))
        {
            if (isRequired)
            {
                ReportMissing(key, " Expected a list.");
            }
            return [];
        }

        if (value is not YamlList list)
        {
            _findings.Add(value.Place, $"Expected a list for '{key}': lines that begin with '- ', or [one, two].");
            return [];
        }

        if (list.Items.Length > MostItems)
        {
            _findings.Add(value.Place, FormattableString.Invariant($"The list '{key}' has {list.Items.Length} items; {MostItems} are taken. Make it shorter."));
            return [];
        }

        if (list.Items.IsEmpty)
        {
            _findings.Add(value.Place, $"The list '{key}' is empty. Write at least one item{(isRequired ? "" : ", or leave the key out")}.");
        }
        foreach (YamlValue item in list.Items)
        {
            _findings.Shape?.Below(item, _what, key, isItem: true);
        }

        return [.. list.Items.Select(read)];
    }

    public ImmutableArray<string> Texts(string key, bool isRequired = false)
    {
        _findings.Shape?.Texts(_what, key);
        return Each(key, isRequired, item => TextOf(item, $"an item of '{key}'") ?? "");
    }

    /// <summary>A map below <paramref name="key"/>, or null where there is none.</summary>
    public EntryReader? Map(string key, string what, params string[] keys)
    {
        if (!_values.TryGetValue(key, out YamlValue? value))
        {
            return null;
        }

        _findings.Shape?.Below(value, _what, key, isItem: false);
        return new EntryReader(value, _findings, what, keys);
    }

    /// <summary>The entries of a map whose keys are free.</summary>
    public IEnumerable<(YamlText Key, YamlValue Value)> FreeMap(string key)
    {
        if (!_values.TryGetValue(key, out YamlValue? value))
        {
            return [];
        }

        if (value is YamlMap map)
        {
            return map.Entries;
        }

        Report(key, $"Expected keys with their values below '{key}'.");
        return [];
    }

    void ReportMissing(string key, string remedy)
    {
        if (IsMap && !Has(key))
        {
            _findings.Add(Place, $"The key '{key}' is missing in {_what}.{remedy}");
        }
    }

    /// <summary>A text that was written in several lines is shown in as many as the screen needs.</summary>
    static string OnOneLine(string text) =>
        text.AsSpan().IndexOfAny('\n', '\r', '\t') < 0 ? text.Trim() : string.Join(' ', text.Split(['\n', '\r', '\t', ' '], StringSplitOptions.RemoveEmptyEntries));

    string? TextOf(YamlValue value, string what)
    {
        if (value is YamlText { Text: { } text } && !string.IsNullOrWhiteSpace(text))
        {
            int most = LongTexts.Contains(what) ? TextLength.Note : TextLength.Title;
            if (TextLength.Problem(text, most, $"The text of {what}") is not { } tooLong)
            {
                return OnOneLine(text);
            }

            _findings.Add(value.Place, tooLong);
            return null;
        }

        _findings.Add(value.Place, value is YamlText ? $"{what} has no value. Write a text after it, or remove it." : $"Expected a plain text for {what}.");
        return null;
    }
}
