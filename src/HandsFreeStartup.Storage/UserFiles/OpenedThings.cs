namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Follows everything that is opened until it is closed and, on the gas side, checked for leaks: the way through must leave nothing open.</summary>
sealed class OpenedThings
{
    readonly Dictionary<string, (StepEntry Step, int Index, bool IsGasSide)> _open = [];
    readonly Dictionary<string, (StepEntry Step, int Index)> _unproven = [];
    readonly HashSet<string> _known = [];

    public void Check(IReadOnlyList<StepEntry> steps)
    {
        foreach (StepEntry step in steps)
        {
            for (int i = 0; i < step.Step.Opens.Length; i++)
            {
                Open(step, i);
            }

            for (int i = 0; i < step.Step.Closes.Length; i++)
            {
                Close(step, i);
            }

            for (int i = 0; i < step.Step.Proves.Length; i++)
            {
                Prove(step, i);
            }
        }

        foreach ((string name, (StepEntry step, int index, _)) in _open)
        {
            step.Entry.Report("opens", index, $"'{name}' is opened here and never closed. Add a later step with 'closes: [{name}]'.");
        }

        foreach ((string name, (StepEntry step, int index)) in _unproven)
        {
            step.Entry.Report("closes", index, $"'{name}' is on the gas side and closed here, but no later step checks it for leaks. Add one with 'proves: [{name}]'.");
        }
    }

    void Open(StepEntry step, int index)
    {
        string name = step.Step.Opens[index].Name;
        if (_open.ContainsKey(name))
        {
            step.Entry.Report("opens", index, $"'{name}' is open already. Close it first, or give the other thing its own name.");
        }

        _known.Add(name);
        _unproven.Remove(name);
        _open[name] = (step, index, step.Step.Opens[index].IsGasSide);
    }

    void Close(StepEntry step, int index)
    {
        string name = step.Step.Closes[index];
        if (!_open.Remove(name, out (StepEntry Step, int Index, bool IsGasSide) opened))
        {
            step.Entry.Report("closes", index, _known.Contains(name)
                ? $"'{name}' is closed already. Remove it here."
                : $"'{name}' is closed here, but no earlier step opens it.{Hint(name)}");
        }
        else if (opened.IsGasSide)
        {
            _unproven[name] = (step, index);
        }
    }

    void Prove(StepEntry step, int index)
    {
        string name = step.Step.Proves[index];
        if (_unproven.Remove(name))
        {
            return;
        }

        step.Entry.Report("proves", index,
            _open.TryGetValue(name, out (StepEntry Step, int Index, bool IsGasSide) opened)
                ? opened.IsGasSide
                    ? $"'{name}' is still open here. Close it in an earlier step, then check it for leaks."
                    : $"'{name}' is not on the gas side and needs no leak check. Remove it here, or write gas_side: true where it is opened."
            : _known.Contains(name) ? $"'{name}' needs no leak check here: it is not on the gas side, or was checked already. Remove it."
            : $"'{name}' is checked for leaks here, but no earlier step opens it.{Hint(name)}");
    }

    string Hint(string name) => _known.Count == 0 ? "" : Nearest.Hint(name, _known);
}
