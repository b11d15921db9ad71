
namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>How far a heard phrase can be trusted.</summary>
public enum Certainty
{
    /// <summary>Not understood: say again, nothing is entered.</summary>
    Red,
    /// <summary>Probably understood: read back, needs a confirmation.</summary>
    Amber,
    /// <summary>Understood: entered, read back, can be disregarded.</summary>
    Green,
}

/// <summary>Where a phrase came from.</summary>
public enum Channel
{
    /// <summary>Microphone or recording.</summary>
    Voice,
    /// <summary>Keyboard.</summary>
    Keys,
}

/// <summary>The evidence behind a phrase.</summary>
/// <param name="Words">What was heard or typed, as words.</param>
/// <param name="Channel">Voice or keys.</param>
/// <param name="Certainty">Class after the certainty policy.</param>
public sealed record Evidence(string Words, Channel Channel, Certainty Certainty)
{
    /// <summary>Mean unmasked log-probability per token, end included; 0 for keys.</summary>
    public double Score { get; init; }

    /// <summary>Log-probability of the best value minus that of the second best; 0 for keys.</summary>
    public double Margin { get; init; }

    /// <summary>Log-probability minus that of the best free decoding of the same sound; 0 for keys.</summary>
    public double Ratio { get; init; }

    /// <summary>What kept it from green, in plain words; empty when green.</summary>
    public string Why { get; init; } = "";

    /// <summary>Name of the kept recording, or null.</summary>
    public string? Clip { get; init; }

    /// <summary>Evidence of a key press or typed text.</summary>
    public static Evidence Typed(string words) => new(words, Channel.Keys, Certainty.Green);
}

/// <summary>One thing that was said or typed, or the passing of time: the only input of the procedure.</summary>
/// <param name="Evidence">How it was heard.</param>
public abstract record Phrase(Evidence Evidence)
{
    /// <summary>What in it may have been a call for help, however faint; null where nothing may.</summary>
    public FaintCall? Faint { get; init; }

    /// <summary>A field with its value.</summary>
    /// <param name="Field">Which field.</param>
    /// <param name="Value">In the field's unit, with the decimals as spoken (7.60 keeps its zero).</param>
    /// <param name="Evidence">How it was heard; amber needs a confirmation.</param>
    public sealed record Reading(Field Field, decimal Value, Evidence Evidence) : Phrase(Evidence)
    {
        /// <summary>Whether "over range", or a number above the field's range, was said; the value is then the end of the range.</summary>
        public bool IsOver { get; init; }
    }

    /// <summary>The lowest and the highest of something, where a range was asked for; never better than amber.</summary>
    /// <param name="Field">Of what.</param>
    /// <param name="Lower">In the field's unit, with the decimals as spoken.</param>
    /// <param name="Upper">Above the lower one.</param>
    /// <param name="Evidence">How it was heard.</param>
    public sealed record Range(Field Field, decimal Lower, decimal Upper, Evidence Evidence) : Phrase(Evidence);

    /// <summary>A command; only a green one, or a safety phrase, arrives here.</summary>
    /// <param name="Word">Which.</param>
    /// <param name="Evidence">How it was heard.</param>
    public sealed record Command(CommandWord Word, Evidence Evidence) : Phrase(Evidence)
    {
        /// <summary>Whether a fire was called out: an emergency stop with its own instructions.</summary>
        public bool IsFire { get; init; }

        /// <summary>Whether it calls for help.</summary>
        public bool IsSafetyPhrase => Commands.Of(Word).IsSafetyPhrase;
    }

    /// <summary>An answer to the tool's question.</summary>
    /// <param name="Word">Which.</param>
    /// <param name="Evidence">How it was heard.</param>
    public sealed record Answer(AnswerWord Word, Evidence Evidence) : Phrase(Evidence);

    /// <summary>One of the choices that were offered.</summary>
    /// <param name="Value">Which, as it is kept.</param>
    /// <param name="Evidence">How it was heard.</param>
    public sealed record Choice(string Value, Evidence Evidence) : Phrase(Evidence);

    /// <summary>A step that somebody wants to return to.</summary>
    /// <param name="Step">Which.</param>
    /// <param name="Evidence">How it was heard.</param>
    public sealed record Jump(SpokenStep Step, Evidence Evidence) : Phrase(Evidence);

    /// <summary>Free speech that was asked for; the words stand in the evidence.</summary>
    /// <param name="Evidence">The words and how they were heard.</param>
    public sealed record Dictation(Evidence Evidence) : Phrase(Evidence);

    /// <summary>A photo was taken; it is kept beside the record already.</summary>
    /// <param name="Name">Name of the copy.</param>
    /// <param name="Sha256">Lower-case hexadecimal hash of its bytes.</param>
    /// <param name="Evidence">As typed.</param>
    public sealed record Photo(string Name, string Sha256, Evidence Evidence) : Phrase(Evidence);

    /// <summary>Speech that could not be understood, or was not meant for the tool.</summary>
    /// <param name="Evidence">What it sounded like, and why it was refused.</param>
    public sealed record NotUnderstood(Evidence Evidence) : Phrase(Evidence);

    /// <summary>Time has passed; timers may be due.</summary>
    public sealed record TimePassed() : Phrase(Evidence.Typed(""));
}
