namespace HandsFreeStartup.Compute;

/// <summary>One table that <c>compute</c> knows: input columns, output columns and how a row is worked out.</summary>
abstract class ComputeTable(string name, string[] inputs)
{
    /// <summary>As given on the command line.</summary>
    public string Name { get; } = name;

    /// <summary>Input columns, in the order in which they are written.</summary>
    public string[] Inputs { get; } = inputs;

    /// <summary>Output columns, in order.</summary>
    public abstract IEnumerable<string> Outputs { get; }

    /// <summary>Adds the output cells of one row to its line, each after a comma; empty ones when the row has problems.</summary>
    public abstract void Append(RowInputs inputs, RowText line);
}

/// <summary>A table whose outputs are read off one evaluated row.</summary>
/// <typeparam name="T">What a row is evaluated to.</typeparam>
/// <param name="name">As given on the command line.</param>
/// <param name="inputs">Input columns.</param>
/// <param name="evaluate">Reads the inputs and evaluates them; may note problems.</param>
/// <param name="outputs">Output columns with how each is read off.</param>
sealed class ComputeTable<T>(string name, string[] inputs, Func<RowInputs, T> evaluate, params (string Column, Func<T, Cell> Value)[] outputs)
    : ComputeTable(name, inputs)
{
    public override IEnumerable<string> Outputs => outputs.Select(output => output.Column);

    public override void Append(RowInputs inputs, RowText line)
    {
        T row = evaluate(inputs);
        bool isGood = inputs.Problems.Count == 0;
        foreach ((_, Func<T, Cell> value) in outputs)
        {
            (isGood ? value(row) : double.NaN).AppendTo(line);
        }
    }
}
