using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Simulation;

/// <summary>What is seen, smelled or heard where a step asks for it.</summary>
/// <param name="Text">As shown.</param>
/// <param name="Answer">The true answer to the question of the step; null where it cannot be told yet, or nothing is asked.</param>
public sealed record Sight(Message Text, bool? Answer)
{
    const double Smells = 2e-4, Spills = -0.3;

    /// <summary>What is to be seen for a step.</summary>
    /// <remarks>The steps of the shipped procedures are known by their ids; where another procedure asks something else, nothing wrong is to be seen.</remarks>
    public static Sight Of(Furnace furnace, FurnaceState state, Hands hands, Step step)
    {
        bool Has(Fault fault) => furnace.Has(fault, hands);
        bool burns = state.Phase == BurnerPhase.Burning;
        bool smells = state.GasInAir > Smells;
        bool sealedAir = furnace.IsSealed;
        return step.Id switch
        {
            "smell" => smells ? new("It smells of gas.", true) : new("You smell nothing.", false),
            "relight-smell" => smells ? new("It smells of gas.", true) : new("You smell nothing, neither at the burner nor at the floor.", false),
            "clearances" => Has(Fault.ShortOfAir) && !sealedAir ? new("A board covers the openings for combustion air.", false) : new("Nothing stands too close, and the air openings are free.", true),
            "vent" or "vent-drawing" => new("The vent rises, is supported, and sound as far as it can be seen.", true),
            "vent-pushing" => Has(Fault.ShortOfAir) ? new("Leaves cover half of the intake.", false) : new("The joints are cemented, and both terminals look clear.", true),
            "condensate" => new("The trap is full, and the drain runs.", true),
            "heat-exchanger" => Has(Fault.CrackedExchanger) ? new("In the mirror there is a crack, as long as a finger.", true) : new("The metal is clean and whole.", false),
            "conversion" => Has(Fault.WrongOrifice) || Has(Fault.NotDerated) ? new("The number on the orifices is larger than that of the kit for this place.", false) : new("The orifices have the number of the kit, and the label is filled in.", true),
            "orifices" => Has(Fault.NotDerated) ? new("The orifices have the number for sea level.", false) : new("The number can be read on two orifices, and it is right.", true),
            "filter" => Has(Fault.DirtyFilter) ? new("The filter is gray and full.", null) : new("The filter is clean, the registers can be opened.", null),
            "draft-by" => new(furnace.IsNatural ? "There is a draft hood and no fan." : "A fan sits at the flue outlet.", null),
            "polarity" => Has(Fault.ReversedPolarity) ? new($"Hot to ground shows {Volts(0)}, neutral to ground {Volts(120)}.", false) : new($"Hot to ground shows {Volts(120)}, neutral to ground {Volts(0)}.", true),
            "leak-check" => !hands.GasOn ? new("The gas is closed: no bubble can show.", null) : Has(Fault.GasLeak) ? new("Bubbles grow at the union before the valve.", false) : new("No bubbles.", true),
            "floor-check" => smells ? new("The detector ticks at the floor.", true) : new("The detector stays quiet.", false),
            "flame" or "flame-high" or "flame-low" => Flame(furnace, state, hands),
            "flame-blower" => state.BlowerSeconds < 5 ? new("The blower does not run yet.", null)
                : Has(Fault.CrackedExchanger) ? new("As the blower comes on, the flames lean and turn yellow at one burner.", true) : new("The flames do not move as the blower comes on.", false),
            "leak-check-running" => !burns ? new("The burner is off: no bubble can show.", null) : Has(Fault.GasLeak) ? new("Bubbles grow at the union before the valve.", false) : new("No bubbles.", true),
            "spillage" => !burns ? new("The burner is off.", null) : state.Draft > Spills ? new("The smoke is blown back at the hood.", false) : new("The smoke is drawn in all around.", true),
            "vent-joints" => Has(Fault.BlockedVent) ? new("The analyzer shows CO at the first joint.", false) : new("Nothing at any joint.", true),
            "limit" => burns ? new("The burner still burns.", null) : new(state.BlowerOn ? "The burner went off; the blower runs." : "The burner is off, and so is the blower.", state.BlowerOn && state.Phase == BurnerPhase.Tripped),
            "rollout" or "pressure-switch" or "spill-switch" => burns ? new("The burner burns.", false) : new("The burner went off at once.", state.Phase == BurnerPhase.Tripped),
            "drain-switch" => hands.IsOpen("drain") ? new(burns ? "The burner burns." : "The burner went off; the drain is still shut.", null) : new(burns ? "The burner burns, and the drain runs free." : "The burner went off, and the drain runs free.", burns ? null : true),
            "flame-loss" => state.Phase == BurnerPhase.LockedOut ? new("The valve closed at once; after the third try it locked out.", true) : burns ? new("The burner burns.", null) : new("It tries to light.", null),
            "door" => hands.IsOpen("blower door") ? new("Everything stopped.", true) : new("The door is closed.", null),
            "no-jumper" => hands.Open.Overlaps((string[])["rollout circuit", "pressure hose", "blocked-vent circuit", "covered return", "drain"]) ? new("Something still hangs open.", false) : new("Every wire and hose is back, no jumper.", true),
            "pressure-holds" => !burns ? new("The burner is off.", null) : Pressure(furnace, state, hands),
            "prove-ports" => Plugs(furnace, state, hands),
            "panels" => hands.IsOpen("blower door") ? new("The blower door is open.", false) : new("Every panel is tight, the filter lies right.", true),
            _ => new("Nothing wrong is to be seen.", step.Question is { Choices.IsEmpty: true } question ? question.Proper : null),
        };
    }

    static ShownValue Volts(int volts) => ShownValue.Alone(volts, Procedure.Hearing.Unit.Volts.Symbol);

    static Sight Flame(Furnace furnace, FurnaceState state, Hands hands)
    {
        double load = state.GasFlow / furnace.StageOf(hands).GasFlow;
        return state.Phase is BurnerPhase.Purging or BurnerPhase.Igniting ? new("It is about to light.", null)
            : state.Phase != BurnerPhase.Burning ? new("There is no flame.", null)
            : state.BurnSeconds < 15 ? new("It has just lit.", null)
            : state.Exhaust.Lambda < 1.12 ? new("Long, lazy flames with yellow tips.", false)
            : load > 1.25 ? new("Hard flames that reach the metal.", false)
            : new("Steady blue flames, off the metal.", true);
    }

    static Sight Pressure(Furnace furnace, FurnaceState state, Hands hands)
    {
        DeclaredLimit? limit = furnace.Plan.Limit(FieldId.ManifoldPressure, hands.High ? "high" : "low");
        double inches = state.Manifold / Procedure.Hearing.Unit.InchesOfWater.Scale;
        return new($"The manifold gauge shows {ShownValue.Alone(Math.Round((decimal)inches, 2) + 0.00m, Procedure.Hearing.Unit.InchesOfWater.Symbol)}", limit is null || (inches >= (double)(limit.Lower ?? 0) - 0.005 && inches <= (double)(limit.Upper ?? 99) + 0.005));
    }

    static Sight Plugs(Furnace furnace, FurnaceState state, Hands hands) =>
        hands.IsOpen("inlet port") || hands.IsOpen("manifold port") ? new("A gas port is open.", false)
        : state.Phase != BurnerPhase.Burning ? new("The burner is off: no bubble can show.", null)
        : furnace.Has(Fault.PortLeftOpen, hands) ? new("Bubbles at the plug of the manifold port.", false)
        : new("No bubbles at either plug.", true);
}
