using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics.X86;

namespace HandsFreeStartup.Speech.Native;

/// <summary>The native recognizer cannot be used on this machine; the message is one sentence with the remedy.</summary>
/// <param name="message">The sentence.</param>
public sealed class RecogniserUnavailableException(string message) : Exception(message);

/// <summary>Loads the native library that the package Whisper.net.Runtime puts beside the program, and tests that it is the one the declarations were written for.</summary>
public static class WhisperLibrary
{
    const string ExpectedVersion = "1.8.5";
    const int ExpectedFullParams = 304;
    const int ExpectedContextParams = 48;

    static readonly Lazy<string?> Problem = new(LoadAndTest);

    /// <summary>Why the native library cannot be used, as one sentence with the remedy; null when it can.</summary>
    public static string? Check() => Problem.Value;

    /// <summary>Makes the native functions callable.</summary>
    /// <exception cref="RecogniserUnavailableException">They are not usable on this machine.</exception>
    public static void Require()
    {
        if (Check() is { } problem)
        {
            throw new RecogniserUnavailableException(problem);
        }
    }

    static string? LoadAndTest()
    {
        if (RuntimeInformation.ProcessArchitecture == Architecture.X64 && !(Avx2.IsSupported && Fma.IsSupported))
        {
            return "This processor lacks AVX2 and FMA, which the speech recognizer needs; use the keys, or another computer.";
        }

        string folder = Path.Combine(AppContext.BaseDirectory, "runtimes", Platform);
        LetThreadsSleep();
        nint library = 0;
        try
        {
            // Each library asks for the ones before it by name only, so they must be in the process already.
            foreach (string name in (string[])["ggml-base-whisper", "ggml-cpu-whisper", "ggml-whisper", WhisperNative.Library])
            {
                library = NativeLibrary.Load(Path.Combine(folder, FileName(name)));
            }
        }
        catch (Exception e) when (e is DllNotFoundException or BadImageFormatException)
        {
            return Explain(e.Message, folder);
        }

        NativeLibrary.SetDllImportResolver(typeof(WhisperLibrary).Assembly, (name, _, _) => name == WhisperNative.Library ? library : 0);
        return SelfTest();
    }

    /// <summary>
    /// The native library's threads wait for each other by spinning unless told otherwise; as soon as anything else wants a core, each decode then takes ten times as long.
    /// libgomp reads this once, when it is loaded, and only from the process's own environment block.
    /// </summary>
    static void LetThreadsSleep()
    {
        if (OperatingSystem.IsLinux())
        {
            _ = WhisperNative.SetEnvironment("OMP_WAIT_POLICY", "passive", overwrite: 0);
        }
    }

    static unsafe string? SelfTest()
    {
        string version = Marshal.PtrToStringUTF8((nint)WhisperNative.Version()) ?? "none";
        if (version != ExpectedVersion)
        {
            return $"The native speech library reports version {version}, but {ExpectedVersion} is needed; restore the packages of this program again.";
        }

        WhisperNative.LogSet(&WhisperNative.Silence, 0);
        if (Unsafe.SizeOf<FullParams>() != ExpectedFullParams || Unsafe.SizeOf<ContextParams>() != ExpectedContextParams)
        {
            return "The parameter blocks of the native speech library have another size on this system; use the keys, or a 64-bit Linux system.";
        }

        // A shifted field would make the library read nonsense: well-known defaults must stand where they are expected, first field to last.
        FullParams defaults = WhisperNative.FullDefaultParams(WhisperNative.Greedy);
        bool inPlace = defaults is
        {
            MaxTextContext: 16384,
            TemperatureIncrement: 0.2f,
            EntropyThreshold: 2.4f,
            NoSpeechThreshold: 0.6f,
            GreedyBestOf: 5,
            GrammarPenalty: 100f,
            VadParams.Threshold: 0.5f,
        };
        return inPlace ? null : "The parameter blocks of the native speech library have another layout than expected; restore the packages of this program again.";
    }

    static string Platform =>
        (OperatingSystem.IsWindows() ? "win" : OperatingSystem.IsMacOS() ? "macos" : "linux")
        + (RuntimeInformation.ProcessArchitecture == Architecture.Arm64 ? "-arm64" : "-x64");

    static string FileName(string name) =>
        OperatingSystem.IsWindows() ? $"{name}.dll" : OperatingSystem.IsMacOS() ? $"lib{name}.dylib" : $"lib{name}.so";

    /// <summary>Names the system package that brings what the loader missed.</summary>
    internal static string Explain(string loaderMessage, string folder) => loaderMessage switch
    {
        _ when loaderMessage.Contains("libgomp", StringComparison.Ordinal) => "The speech recognizer needs libgomp.so.1: install the system package libgomp1.",
        _ when loaderMessage.Contains("libstdc++", StringComparison.Ordinal) => "The speech recognizer needs libstdc++.so.6: install the system package libstdc++6.",
        _ when loaderMessage.Contains("libgcc_s", StringComparison.Ordinal) => "The speech recognizer needs libgcc_s.so.1: install the system package libgcc-s1.",
        _ when loaderMessage.Contains("GLIBC", StringComparison.Ordinal) => "The speech recognizer needs a newer C library (glibc 2.32 or later): use a newer system, or the keys.",
        _ => $"The native speech library cannot be loaded from {folder}; build the program again so that the files of Whisper.net.Runtime are beside it.",
    };
}
