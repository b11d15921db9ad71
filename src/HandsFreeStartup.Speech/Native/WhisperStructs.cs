using System.Runtime.InteropServices;

namespace HandsFreeStartup.Speech.Native;

/// <summary>Native <c>whisper_vad_params</c> of whisper.cpp 1.8.5.</summary>
[StructLayout(LayoutKind.Sequential)]
struct VadParams
{
    public float Threshold;
    public int MinSpeechMs;
    public int MinSilenceMs;
    public float MaxSpeechSeconds;
    public int SpeechPadMs;
    public float SamplesOverlap;
}

/// <summary>Native <c>whisper_vad_context_params</c> of whisper.cpp 1.8.5.</summary>
[StructLayout(LayoutKind.Sequential)]
struct VadContextParams
{
    public int Threads;
    public byte UseGpu;
    public int GpuDevice;
}

/// <summary>Native <c>whisper_context_params</c> of whisper.cpp 1.8.5, 48 bytes.</summary>
[StructLayout(LayoutKind.Sequential)]
struct ContextParams
{
    public byte UseGpu;
    public byte FlashAttention;
    public int GpuDevice;
    public byte TokenTimes;
    public int TokenTimesPreset;
    public int TokenTimesTop;
    public nuint HeadCount;
    public nint Heads;
    public nuint TokenTimesMemory;
}

/// <summary>Native <c>whisper_full_params</c> of whisper.cpp 1.8.5, 304 bytes.</summary>
[StructLayout(LayoutKind.Sequential)]
struct FullParams
{
    public int Strategy;
    public int Threads;
    public int MaxTextContext;
    public int OffsetMs;
    public int DurationMs;
    public byte Translate;
    public byte NoContext;
    public byte NoTimestamps;
    public byte SingleSegment;
    public byte PrintSpecial;
    public byte PrintProgress;
    public byte PrintRealtime;
    public byte PrintTimestamps;
    public byte TokenTimestamps;
    public float TokenTimestampThreshold;
    public float TokenTimestampSumThreshold;
    public int MaxLength;
    public byte SplitOnWord;
    public int MaxTokens;
    public byte DebugMode;
    public int AudioContext;
    public byte TinyDiarize;
    public nint SuppressRegex;
    public nint InitialPrompt;
    public byte CarryInitialPrompt;
    public nint PromptTokens;
    public int PromptTokenCount;
    public nint Language;
    public byte DetectLanguage;
    public byte SuppressBlank;
    public byte SuppressNonSpeech;
    public float Temperature;
    public float MaxInitialTimestamp;
    public float LengthPenalty;
    public float TemperatureIncrement;
    public float EntropyThreshold;
    public float LogProbabilityThreshold;
    public float NoSpeechThreshold;
    public int GreedyBestOf;
    public int BeamSize;
    public float BeamPatience;
    public nint NewSegment;
    public nint NewSegmentData;
    public nint Progress;
    public nint ProgressData;
    public nint EncoderBegin;
    public nint EncoderBeginData;
    public nint Abort;
    public nint AbortData;
    public nint LogitsFilter;
    public nint LogitsFilterData;
    public nint GrammarRules;
    public nuint GrammarRuleCount;
    public nuint GrammarStart;
    public float GrammarPenalty;
    public byte Vad;
    public nint VadModelPath;
    public VadParams VadParams;
}
