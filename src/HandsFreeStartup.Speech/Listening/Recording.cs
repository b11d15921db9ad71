using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using System.Threading.Channels;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>One run of a recording program. It never throws: what goes wrong is told by <see cref="Complaint"/>.</summary>
sealed class Recording : IAsyncDisposable
{
    static readonly TimeSpan FarewellTime = TimeSpan.FromSeconds(2);

    /// <summary>So begins what parec says of its device, when it is given one and when it is given another. Only with --verbose, and only then it also says all this.</summary>
    static readonly ImmutableArray<string> OfDevice = ["Connected to device ", "Stream moved to device "];

    /// <summary>So begins what this program says of its device where it is the recorder; the name that follows may have blanks.</summary>
    internal const string OwnDevice = "Recording from ";

    static readonly ImmutableArray<string> Chatter =
    [
        "Time: ", "Opening a ", "Connection established", "Stream successfully created", "Buffer metrics", "Using sample spec", "Stream device ", "Stream started",
        "Stream overrun", "Stream underrun", "Stream buffer attributes", "Got EOF", "Got signal", "Draining", "Playback stream",
    ];

    readonly TimeProvider _clock;
    readonly Channel<float[]> _sound = Channel.CreateUnbounded<float[]>(new UnboundedChannelOptions { SingleWriter = true });
    readonly Process? _process;
    readonly Task _pump = Task.CompletedTask;
    readonly Task _complaints = Task.CompletedTask;
    string _lastLine = "";
    string? _device;

    Recording(Process? process, string lastLine, TimeProvider clock)
    {
        (_process, _lastLine, _clock) = (process, lastLine, clock);
        if (process is null)
        {
            _sound.Writer.Complete();
            return;
        }

        _pump = Task.Factory.StartNew(Pump, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        _complaints = Task.Factory.StartNew(ReadComplaints, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>Samples as they arrive; complete when the program has ended.</summary>
    public ChannelReader<float[]> Sound => _sound.Reader;

    /// <summary>The last thing that the program said about itself, or empty.</summary>
    public string Complaint => Volatile.Read(ref _lastLine);

    /// <summary>The device that the sound server has given; null where the program does not say.</summary>
    public string? Device => Volatile.Read(ref _device);

    /// <summary>Starts the program.</summary>
    public static Recording Start(CaptureCommand command, TimeProvider clock)
    {
        ProcessStartInfo start = new(command.Program, command.Arguments) { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, CreateNoWindow = true, StandardErrorEncoding = Encoding.UTF8 };
        start.Environment["LC_ALL"] = "C";
        try
        {
            return new Recording(Process.Start(start), "", clock);
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException or IOException)
        {
            return new Recording(null, e.Message, clock);
        }
    }

    /// <summary>Ends the program if it still runs.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_process is null)
        {
            return;
        }

        EndedProcess.Kill(_process);
        await Within(FarewellTime, Task.WhenAll(_pump, _complaints));
        _process.Dispose();
    }

    /// <summary>Waits a moment for the program's last words, once its sound has ended.</summary>
    public Task LastWords() => Within(TimeSpan.FromMilliseconds(200), _complaints);

    // A stranger that inherited the pipe may keep it open: then it is left behind.
    async Task Within(TimeSpan patience, Task task)
    {
        try
        {
            await task.WaitAsync(patience, _clock);
        }
        catch (TimeoutException)
        {
        }
    }

    void Pump()
    {
        byte[] buffer = new byte[8192];
        int kept = 0;
        try
        {
            Stream output = _process!.StandardOutput.BaseStream;
            while (output.Read(buffer, kept, buffer.Length - kept) is var read and > 0)
            {
                int there = kept + read;
                float[] samples = new float[there / 2];
                for (int i = 0; i < samples.Length; i++)
                {
                    samples[i] = (short)(buffer[2 * i] | buffer[2 * i + 1] << 8) / 32768f;
                }

                kept = there & 1;
                buffer[0] = buffer[there - 1];
                _sound.Writer.TryWrite(samples);
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            Volatile.Write(ref _lastLine, e.Message);
        }

        _sound.Writer.Complete();
    }

    void ReadComplaints()
    {
        try
        {
            while (_process!.StandardError.ReadLine() is { } line)
            {
                Hear(line.Trim());
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // The program is gone, and its words with it.
        }
    }

    void Hear(string said)
    {
        if (OfDevice.FirstOrDefault(begin => said.StartsWith(begin, StringComparison.Ordinal)) is { } begin)
        {
            Volatile.Write(ref _device, said[begin.Length..].Split(' ')[0]);
        }
        else if (said.StartsWith(OwnDevice, StringComparison.Ordinal))
        {
            Volatile.Write(ref _device, said[OwnDevice.Length..]);
        }
        else if (said.Length > 0 && !Chatter.Any(begin => said.StartsWith(begin, StringComparison.Ordinal)))
        {
            Volatile.Write(ref _lastLine, said);
        }
    }
}
