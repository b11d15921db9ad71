using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Reads a site file.</summary>
static class SiteReader
{
    public static Site? Read(string text, Findings findings)
    {
        if (YamlTree.Read(text, findings) is not { } map)
        {
            return null;
        }

        EntryReader file = new(map, findings, "a site", "id", "title", "customer", "address", "altitude_feet",
            "meter_dial", "heating_value", "heating_value_percent", "burning_hours", "analyzer_correlation", "rooms", "instruments");
        return new Site(
            file.Id("id"),
            file.Text("title"),
            file.Text("customer"),
            file.Text("address"),
            file.Number("altitude_feet", -1400, 15000),
            Rooms(file),
            Instruments(file, findings))
        {
            MeterDialCubicFeet = file.Has("meter_dial") ? file.Number("meter_dial", 0.1m, 100) : null,
            HeatingValue = file.Has("heating_value") ? file.Number("heating_value", 300, 3500) : null,
            HeatingValuePercent = file.Has("heating_value_percent") ? file.Number("heating_value_percent", 0.1m, 10) : 2,
            AnalyzerCorrelation = file.Has("analyzer_correlation") ? file.Number("analyzer_correlation", -1, 1) : 0,
            BurningHours = file.Has("burning_hours") ? file.Number("burning_hours", 1, 8784) : null,
        };
    }

    static ImmutableArray<string> Rooms(EntryReader file)
    {
        ImmutableArray<string> rooms = file.Texts("rooms", isRequired: true);
        HashSet<string> ids = [];
        for (int i = 0; i < rooms.Length; i++)
        {
            if (!rooms[i].All(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-'))
            {
                file.Report("rooms", i, $"'{rooms[i]}' cannot be a room. Expected letters, digits, spaces and hyphens, such as 'upper bedroom'.");
            }

            if (TextLength.Problem(rooms[i], TextLength.Name, "The name of the room") is { } tooLong)
            {
                file.Report("rooms", i, tooLong);
            }

            if (!ids.Add(rooms[i].Replace(' ', '-')))
            {
                file.Report("rooms", i, $"The room '{rooms[i]}' stands here a second time. Give it another name, or remove it.");
            }
        }
        return rooms;
    }

    static ImmutableArray<InstrumentUncertainty> Instruments(EntryReader file, Findings findings)
    {
        HashSet<string> fields = [];
        return file.Each("instruments", false, value =>
        {
            EntryReader entry = new(value, findings, "an instrument", "field", "expanded", "expanded_percent", "resolution", "drift_per_year", "calibrated", "source");
            string field = entry.Choice("field", [.. Fields.All.Select(one => one.Id)]);
            if (field.Length > 0 && !fields.Add(field))
            {
                entry.Report("field", $"The field '{field}' has an instrument already. Keep one.");
            }

            if (entry.IsMap && !entry.Has("expanded") && !entry.Has("expanded_percent"))
            {
                entry.Report("field", "No uncertainty is given. Expected 'expanded' in the field's unit, 'expanded_percent' of the reading, or both.");
            }

            // An instrument that reads worse than the whole range of its field reads nothing.
            decimal most = Fields.Find(field) is { } known ? known.Highest - known.Lowest : decimal.MaxValue;
            return new InstrumentUncertainty(field, Uncertainty(entry, "expanded", most), Uncertainty(entry, "expanded_percent", 100),
                entry.Text("source", " Say who states the uncertainty: the data sheet, the calibration certificate or a standard's class."))
            {
                Resolution = Uncertainty(entry, "resolution", most),
                DriftPerYear = Uncertainty(entry, "drift_per_year", most),
                Calibrated = Calibrated(entry),
            };
        });
    }

    /// <summary>The day from which a drift is counted, which has to be stated with it.</summary>
    static DateOnly? Calibrated(EntryReader entry)
    {
        if (!entry.Has("calibrated"))
        {
            if (entry.IsMap && entry.Has("drift_per_year"))
            {
                entry.Report("drift_per_year", "A drift counts from the last calibration. Add 'calibrated' with its day, such as 2026-03-14.");
            }

            return null;
        }

        if (DateOnly.TryParseExact(entry.Text("calibrated"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            return day;
        }

        entry.Report("calibrated", "That is no day. Write year, month and day, such as 2026-03-14.");
        return null;
    }

    static decimal Uncertainty(EntryReader entry, string key, decimal most)
    {
        if (!entry.Has(key) || entry.Number(key) is not { } value)
        {
            return 0;
        }

        if (value <= 0 || value > most)
        {
            entry.Report(key, FormattableString.Invariant($"{key} {value} is not {(value <= 0 ? "above zero" : $"possible: at most {most} are taken")}. Write the expanded uncertainty (k = 2), or leave the key out."));
        }
        return value;
    }
}
