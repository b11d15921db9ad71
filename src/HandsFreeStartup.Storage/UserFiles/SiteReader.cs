using System.Collections.Immutable;
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
            "meter_dial", "heating_value", "heating_value_percent", "rooms", "instruments");
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
        };
    }

    static ImmutableArray<string> Rooms(EntryReader file)
    {
        ImmutableArray<string> rooms = file.Texts("rooms", isRequired: true);
        for (int i = 0; i < rooms.Length; i++)
        {
            if (!rooms[i].All(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-'))
            {
                file.Report("rooms", i, $"'{rooms[i]}' cannot be a room. Expected letters, digits, spaces and hyphens, such as 'upper bedroom'.");
            }

            string id = rooms[i].Replace(' ', '-');
            if (rooms.Take(i).Any(earlier => earlier.Replace(' ', '-') == id))
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
            EntryReader entry = new(value, findings, "an instrument", "field", "expanded", "expanded_percent", "source");
            string field = entry.Choice("field", [.. Fields.All.Select(one => one.Id)]);
            if (field.Length > 0 && !fields.Add(field))
            {
                entry.Report("field", $"The field '{field}' has an instrument already. Keep one.");
            }

            return new InstrumentUncertainty(field, Uncertainty(entry, "expanded"), Uncertainty(entry, "expanded_percent"),
                entry.Text("source", " Say who states the uncertainty: the data sheet, the calibration certificate or a standard's class."));
        });
    }

    static decimal Uncertainty(EntryReader entry, string key)
    {
        if (entry.IsMap && !entry.Has("expanded") && !entry.Has("expanded_percent"))
        {
            entry.Report("field", "No uncertainty is given. Expected 'expanded' in the field's unit, 'expanded_percent' of the reading, or both.");
        }

        decimal value = entry.Number(key) ?? 0;
        if (entry.Has(key) && value <= 0)
        {
            entry.Report(key, FormattableString.Invariant($"{key} {value} is not above zero. Write the expanded uncertainty (k = 2), or leave the key out."));
        }
        return value;
    }
}
