using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Start;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>The program itself by voice: an emergency stop over its own voice, the way back, a power cut, a resume, and the signature. Timers are short.</summary>
[Trait("Sound", "Live")]
public sealed class EmergencyByVoiceTests(ITestOutputHelper output)
{
    /// <summary>Fast, but slow enough to be interrupted. At 450 a busy machine made it stammer, and the ear took that for a call.</summary>
    const int Rate = 330;

    [SoundRoomFact]
    public async Task An_emergency_stop_is_heard_over_the_tools_own_voice_and_the_job_comes_to_its_end_over_a_power_cut()
    {
        using TemporaryFolder data = new();
        using SoundRoom room = new(Rate);
        await room.Open();
        room.Blow(ClosedLoopTests.BlowerBelowSpeech);
        string sheets = StartTests.Folder("checklists");
        using ProgramInTheRoom program = new(Furnace.From(ShippedPlans.Plan("gas-furnace", "furnace-one-stage-propane", "site-farm", "new"), [], 7), room, data, new Speaker("en-us", 165));
        await program.Start("start", "--quick", "--technician", "Synthetic", "--checklist", $"{sheets}/gas-furnace.yaml", "--appliance", $"{sheets}/furnace-one-stage-propane.yaml", "--site", $"{sheets}/site-farm.yaml");

        await program.GoOn(_ => program.Bench.Step.Id == "flame-blower");
        await StopOverItsVoice(program);
        program.Do("heat off");
        program.Do("close gas");
        await LeadBack(program, "the ladder slipped");
        await program.GoOn(_ => program.Bench.Step.Id == "open-sampling-port");
        await program.Kill();
        int before = program.Log.Count;
        await program.Start("start", "--resume");
        await program.GoOn(view => view.Phase == Phase.Finished);
        await program.Ended();
        output.WriteLine(program.ToString());
        output.WriteLine(program.Told);

        Assert.Empty(program.Wrong);
        Assert.True(before < program.Log.Count);
        Assert.DoesNotContain(program.Log.SkipWhile(happened => happened is not StartupResumed), happened => happened is StartupStopped);
        Assert.Single(program.Log.OfType<StartupResumed>());
        Assert.IsType<StartupSigned>(program.Log[^1]);
        Assert.DoesNotContain(program.Log, happened => HowHeard.Of(happened) is { Channel: Channel.Keys, Words.Length: > 0 });
        ProgramResult verified = await InProcess.Run("verify", data.Job, "--data", data.Path);
        Assert.True(verified.ExitCode == 0, verified.Output + verified.Error);
    }

    /// <summary>Lets it speak, and calls out while the loudspeaker sounds.</summary>
    static async Task StopOverItsVoice(ProgramInTheRoom program)
    {
        for (int tries = 0; tries < 3 && !program.Log.OfType<StartupStopped>().Any(); tries++)
        {
            await program.Say("say again");
            await ProgramInTheRoom.Until(() => program.IsLoud);
            Assert.True(tries > 0 || !program.Log.OfType<StartupStopped>().Any(), "its own voice stopped it before anybody called");
            await program.Utter("emergency stop");
            await program.Logged<StartupStopped>();
        }

        // Seen once on a busy machine: a second stop, four seconds before the call was heard whole.
        Assert.NotEmpty(program.Log.OfType<StartupStopped>());
        Assert.All(program.Log.OfType<StartupStopped>(), stop => Assert.Equal((StopCause.Emergency, Channel.Voice), (stop.Cause, stop.Evidence.Channel)));
    }

    static async Task LeadBack(ProgramInTheRoom program, string cause)
    {
        for (int tries = 0; tries < 20 && program.View.Phase is var phase && phase != Phase.Asking; tries++)
        {
            await program.Say(phase switch
            {
                Phase.Stopped => "yes",
                Phase.Choosing => "own finding",
                Phase.Dictating => cause,
                _ => "confirm",
            });
        }

        Assert.Equal(Phase.Asking, program.View.Phase);
    }
}
