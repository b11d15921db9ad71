using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>Fuels by name: those of the user's file, the presets, and pure gases by symbol.</summary>
sealed class FuelBook
{
    static readonly string[] Columns = ["fuel", "component", "mole_fraction"];

    readonly Dictionary<string, Fuel> _known = [];

    FuelBook()
    {
        foreach (Species species in Species.InFuels.Where(Burns))
        {
            _known[species.Symbol] = Fuel.FromComposition(species.Symbol, species.Name, new FuelComponent(species, 1));
        }
        foreach (Fuel fuel in Fuel.Presets)
        {
            _known[fuel.Id] = fuel;
        }
        _known["typical-natural-gas"] = Fuel.NaturalGas;
    }

    /// <summary>The presets, and on top of them the fuels of a file.</summary>
    /// <param name="file">Columns fuel, component, mole_fraction, one row a component; null for none.</param>
    /// <exception cref="WrongUseException">The file cannot be read or a fuel of it cannot be used.</exception>
    public static FuelBook Open(string? file)
    {
        FuelBook book = new();
        if (file is not null)
        {
            book.Read(file);
        }
        return book;
    }

    /// <summary>The fuel or gas of that name, or null. Presets may be written with _ for -.</summary>
    public Fuel? Find(ReadOnlySpan<char> name) =>
        _known.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(name, out Fuel? fuel) ? fuel : _known.GetValueOrDefault(name.ToString().Replace('_', '-'));

    static bool Burns(Species species) => species.Atoms.Carbon + species.Atoms.Hydrogen > 0 && species != Species.CarbonDioxide;

    void Read(string file)
    {
        Dictionary<string, List<FuelComponent>> compositions = [];
        using CsvRows rows = CsvRows.Open(file, Columns);
        foreach (RowInputs inputs in Each(rows))
        {
            string name = inputs.Text("fuel");
            Species? species = Species.Find(inputs.Text("component"));
            double fraction = inputs.Number("mole_fraction", 0, 1);
            if (species is null)
            {
                inputs.Refuse("component", $"'{inputs.Text("component")}' is none of {string.Join(", ", Species.InFuels.Select(known => known.Symbol))}");
            }
            if (inputs.Problems is [var (column, reason), ..])
            {
                throw new WrongUseException($"{file}, line {inputs.Line}, column {column}: {reason}.");
            }
            if (!compositions.TryGetValue(name, out List<FuelComponent>? components))
            {
                compositions[name] = components = [];
            }
            components.Add(new(species!, fraction));
        }
        foreach ((string name, List<FuelComponent> components) in compositions)
        {
            Add(file, name, components);
        }
    }

    IEnumerable<RowInputs> Each(CsvRows rows)
    {
        for (RowBatch batch = rows.NewBatch(); rows.Next(batch); batch.Clear())
        {
            batch.Split();
            RowInputs inputs = new(Columns, batch, this);
            for (int row = 0; row < batch.Count; row++)
            {
                inputs.GoTo(row);
                yield return inputs;
            }
        }
    }

    void Add(string file, string name, List<FuelComponent> components)
    {
        try
        {
            _known[name] = Fuel.FromComposition(name, name, [.. components]);
        }
        catch (ArgumentException e)
        {
            throw new WrongUseException($"{file}: {e.Message}");
        }
    }
}
