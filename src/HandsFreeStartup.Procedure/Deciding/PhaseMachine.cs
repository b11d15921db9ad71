using Stateless;
using Stateless.Graph;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>The phases of a start-up and the moves between them; the only place where Stateless is used.</summary>
sealed class PhaseMachine
{
    readonly StateMachine<Phase, Move> _machine = new(Phase.Preparing);

    public PhaseMachine()
    {
        _machine.Configure(Phase.Preparing)
            .Permit(Move.Begin, Phase.Asking);
        _machine.Configure(Phase.Asking)
            .Permit(Move.ReadBack, Phase.Confirming)
            .Permit(Move.Dictate, Phase.Dictating)
            .Permit(Move.AskFinish, Phase.Signing)
            .Permit(Move.AskJump, Phase.Jumping)
            .Permit(Move.Condemn, Phase.Condemning)
            .Permit(Move.Abandon, Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Condemning)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.Abandon, Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Confirming)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.HoldStill, Phase.Stopped)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Jumping)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Dictating)
            .Permit(Move.ReadBack, Phase.ReadingBack)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.HoldStill, Phase.Stopped)
            .Permit(Move.Choose, Phase.Choosing)
            .Permit(Move.Abandon, Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.ReadingBack)
            .Permit(Move.Dictate, Phase.Dictating)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.HoldStill, Phase.Stopped)
            .Permit(Move.Choose, Phase.Choosing)
            .Permit(Move.Abandon, Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Choosing)
            .Permit(Move.Dictate, Phase.Dictating)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.HoldStill, Phase.Stopped)
            .Permit(Move.Abandon, Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Signing)
            .Permit(Move.Settle, Phase.Asking)
            .Permit(Move.HoldStill, Phase.Stopped)
            .Permit(Move.Dictate, Phase.Dictating)
            .Permit(Move.Sign, Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
        _machine.Configure(Phase.Stopped)
            .Permit(Move.ReadBack, Phase.Confirming)
            .Permit(Move.Dictate, Phase.Dictating)
            .Permit(Move.Choose, Phase.Choosing)
            .Permit(Move.AskFinish, Phase.Signing)
            .PermitReentry(Move.Stop);
        _machine.Configure(Phase.Finished)
            .Permit(Move.Stop, Phase.Stopped);
    }

    /// <summary>What an event does to the phase.</summary>
    public enum Move
    {
        Begin,
        ReadBack,
        Dictate,
        AskFinish,
        AskJump,
        Condemn,
        Choose,
        Settle,
        HoldStill,
        Sign,
        Abandon,
        Stop,
    }

    public Phase Phase => _machine.State;

    public void Fire(Move move) => _machine.Fire(move);

    public string Drawing() => MermaidGraph.Format(_machine.GetInfo());
}
