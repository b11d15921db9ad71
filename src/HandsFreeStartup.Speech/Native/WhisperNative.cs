using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace HandsFreeStartup.Speech.Native;

/// <summary>
/// The functions of whisper.cpp 1.8.5 that the package Whisper.net.Runtime 1.9.1 ships. Call <see cref="WhisperLibrary.Require"/> before the first of them.
/// </summary>
/// <remarks>A C <c>bool</c> is a <see cref="byte"/>; pointers to contexts, states and detectors are <see cref="nint"/>.</remarks>
static unsafe partial class WhisperNative
{
    /// <summary>Name under which <see cref="WhisperLibrary"/> resolves the shared library.</summary>
    public const string Library = "whisper";

    /// <summary>Value of <see cref="FullParams.Strategy"/> for greedy sampling.</summary>
    public const int Greedy = 0;

    [LibraryImport(Library, EntryPoint = "whisper_version")]
    public static partial byte* Version();

    [LibraryImport(Library, EntryPoint = "whisper_log_set")]
    public static partial void LogSet(delegate* unmanaged[Cdecl]<int, byte*, nint, void> callback, nint userData);

    // Context, state, parameters.

    [LibraryImport(Library, EntryPoint = "whisper_context_default_params")]
    public static partial ContextParams ContextDefaultParams();

    [LibraryImport(Library, EntryPoint = "whisper_init_from_file_with_params_no_state", StringMarshalling = StringMarshalling.Utf8)]
    public static partial nint InitFromFileNoState(string path, ContextParams parameters);

    [LibraryImport(Library, EntryPoint = "whisper_init_state")]
    public static partial nint InitState(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_free_state")]
    public static partial void FreeState(nint state);

    [LibraryImport(Library, EntryPoint = "whisper_free")]
    public static partial void Free(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_full_default_params")]
    public static partial FullParams FullDefaultParams(int strategy);

    // The whole call and its results.

    [LibraryImport(Library, EntryPoint = "whisper_full_with_state")]
    public static partial int FullWithState(nint context, nint state, FullParams parameters, float* samples, int count);

    [LibraryImport(Library, EntryPoint = "whisper_full_n_segments_from_state")]
    public static partial int SegmentCount(nint state);

    [LibraryImport(Library, EntryPoint = "whisper_full_get_segment_no_speech_prob_from_state")]
    public static partial float SegmentNoSpeechProbability(nint state, int segment);

    // Single steps on a state.

    /// <summary>Turns 16 kHz samples into the spectrum that the encoder takes; 0 is success.</summary>
    [LibraryImport(Library, EntryPoint = "whisper_pcm_to_mel_with_state")]
    public static partial int SpectrumWithState(nint context, nint state, float* samples, int count, int threads);

    /// <summary>Encodes the state's spectrum from <paramref name="offset"/> on, over as many positions as the last whole call on this state asked for; 0 is success.</summary>
    [LibraryImport(Library, EntryPoint = "whisper_encode_with_state")]
    public static partial int EncodeWithState(nint context, nint state, int offset, int threads);

    /// <summary>Decodes <paramref name="count"/> tokens after the first <paramref name="past"/> of the state's key-value cache; later ones are forgotten. 0 is success.</summary>
    [LibraryImport(Library, EntryPoint = "whisper_decode_with_state")]
    public static partial int DecodeWithState(nint context, nint state, int* tokens, int count, int past, int threads);

    /// <summary>Logits of the last decode; the row of its last token starts at (count - 1) x vocabulary, the rows before are not filled.</summary>
    [LibraryImport(Library, EntryPoint = "whisper_get_logits_from_state")]
    public static partial float* LogitsFromState(nint state);

    // Vocabulary.

    [LibraryImport(Library, EntryPoint = "whisper_n_vocab")]
    public static partial int VocabularySize(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_to_str")]
    public static partial byte* TokenToString(nint context, int token);

    [LibraryImport(Library, EntryPoint = "whisper_is_multilingual")]
    public static partial int IsMultilingual(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_sot")]
    public static partial int TokenStart(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_eot")]
    public static partial int TokenEnd(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_not")]
    public static partial int TokenNoTimestamps(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_nosp")]
    public static partial int TokenNoSpeech(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_transcribe")]
    public static partial int TokenTranscribe(nint context);

    [LibraryImport(Library, EntryPoint = "whisper_token_lang")]
    public static partial int TokenLanguage(nint context, int language);

    [LibraryImport(Library, EntryPoint = "whisper_lang_id", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int LanguageId(string language);

    // Voice activity.

    [LibraryImport(Library, EntryPoint = "whisper_vad_default_context_params")]
    public static partial VadContextParams VadDefaultContextParams();

    [LibraryImport(Library, EntryPoint = "whisper_vad_init_from_file_with_params", StringMarshalling = StringMarshalling.Utf8)]
    public static partial nint VadInitFromFile(string path, VadContextParams parameters);

    [LibraryImport(Library, EntryPoint = "whisper_vad_free")]
    public static partial void VadFree(nint detector);

    [LibraryImport(Library, EntryPoint = "whisper_vad_reset_state")]
    public static partial void VadResetState(nint detector);

    /// <summary>Detects speech in whole frames of 512 samples, keeping what the detector remembers of earlier calls; 0 is failure.</summary>
    [LibraryImport(Library, EntryPoint = "whisper_vad_detect_speech_no_reset")]
    public static partial byte VadDetectSpeechNoReset(nint detector, float* samples, int count);

    [LibraryImport(Library, EntryPoint = "whisper_vad_detect_speech")]
    public static partial byte VadDetectSpeech(nint detector, float* samples, int count);

    [LibraryImport(Library, EntryPoint = "whisper_vad_n_probs")]
    public static partial int VadProbabilityCount(nint detector);

    [LibraryImport(Library, EntryPoint = "whisper_vad_probs")]
    public static partial float* VadProbabilities(nint detector);

    /// <summary>C library: sets a variable of the process's environment block, which <see cref="Environment"/> does not.</summary>
    [LibraryImport("libc", EntryPoint = "setenv", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int SetEnvironment(string name, string value, int overwrite);

    /// <summary>Swallows what the native library would write to standard error.</summary>
    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    public static void Silence(int _, byte* _1, nint _2)
    {
    }
}
