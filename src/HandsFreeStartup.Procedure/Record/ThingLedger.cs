using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>Everything that was opened. A thing that is opened again while it is open is one thing.</summary>
sealed class ThingLedger
{
    readonly List<ThingFate> _things = [];

    public IReadOnlyList<ThingFate> All => _things;

    public void Open(ThingOpened opened)
    {
        int index = _things.FindLastIndex(thing => thing.Thing.Name == opened.Thing.Name && thing.IsOpen);
        DateTimeOffset since = index < 0 ? opened.At : _things[index].Opened;
        if (index >= 0)
        {
            _things.RemoveAt(index);
        }

        _things.Add(new ThingFate(opened.Thing, since, null, null));
    }

    public void Close(ThingClosed closed) => ChangeLast(closed.Name, thing => thing with { Closed = thing.Closed ?? closed.At });

    public void Prove(ThingProved proved) => ChangeLast(proved.Name, thing => thing.Closed is null ? thing : thing with { Proved = proved.At });

    void ChangeLast(string name, Func<ThingFate, ThingFate> change)
    {
        int index = _things.FindLastIndex(thing => thing.Thing.Name == name);
        if (index >= 0)
        {
            _things[index] = change(_things[index]);
        }
    }
}
