using System.Numerics;
using System.Text;
using HandsFreeStartup.Speech.Native;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>One Whisper model with a long-lived native state: takes a sound, then tells what may follow which tokens.</summary>
sealed unsafe partial class WhisperModel : IDisposable
{
    const int Rate = 16_000;
    const int SamplesPerPosition = 320;

    /// <summary>Encoder positions below which the models begin to err in noise, although the sound is shorter.</summary>
    const int LeastContext = 256;

    /// <summary>A decode of one token is many small products: a second thread waits longer than it works, and each decode takes twice the time.</summary>
    const int DecodeThreads = 1;

    readonly nint _context;
    readonly nint _state;
    readonly int _threads;
    readonly int[] _opening;
    readonly byte[][] _text;
    readonly Stack<float[]> _rows = new();
    readonly List<int> _cached = [];
    int _positions;
    readonly nint _language = System.Runtime.InteropServices.Marshal.StringToCoTaskMemUTF8("en");

    /// <summary>Loads a model file.</summary>
    /// <param name="path">In the engine's format; English only, or multilingual.</param>
    /// <param name="threads">Processor threads to take a sound in with.</param>
    /// <exception cref="RecogniserUnavailableException">The file cannot be loaded.</exception>
    public WhisperModel(string path, int threads)
    {
        WhisperLibrary.Require();
        ContextParams parameters = WhisperNative.ContextDefaultParams();
        parameters.UseGpu = 0;
        parameters.FlashAttention = 1;
        _threads = threads;
        _context = File.Exists(path) ? WhisperNative.InitFromFileNoState(path, parameters) : 0;
        _state = _context == 0 ? 0 : WhisperNative.InitState(_context);
        if (_state == 0)
        {
            throw new RecogniserUnavailableException($"The speech model {path} cannot be loaded; put the file of that name from the program's models folder there again.");
        }

        End = WhisperNative.TokenEnd(_context);
        _text = [.. Enumerable.Range(0, End).Select(TextOf)];
        Dictionary<string, int> idOf = [];
        for (int id = End - 1; id >= 0; id--)
        {
            idOf[Encoding.Latin1.GetString(_text[id])] = id;
        }

        Tokens = new BytePairs(idOf);
        Blank = idOf[" "];
        int start = WhisperNative.TokenStart(_context);
        int noTimestamps = WhisperNative.TokenNoTimestamps(_context);
        _opening = WhisperNative.IsMultilingual(_context) == 0
            ? [start, noTimestamps]
            : [start, WhisperNative.TokenLanguage(_context, WhisperNative.LanguageId("en")), WhisperNative.TokenTranscribe(_context), noTimestamps];
    }

    /// <summary>The token that ends a text.</summary>
    public int End { get; }

    /// <summary>The token of a single space, which may not come first.</summary>
    public int Blank { get; }

    /// <summary>Splits text into this model's tokens.</summary>
    public BytePairs Tokens { get; }

    /// <summary>The text of some tokens.</summary>
    public string Text(IEnumerable<int> tokens) => Encoding.UTF8.GetString([.. tokens.SelectMany(token => _text[token])]);

    /// <summary>Takes a sound in; what follows asks about it.</summary>
    /// <param name="samples">16 kHz mono; at most 29 seconds.</param>
    /// <exception cref="RecogniserUnavailableException">The native library failed.</exception>
    public void Listen(ReadOnlySpan<float> samples)
    {
        // Less than a second, or speech up to the very edge, makes the model drop words.
        float[] padded = new float[Math.Max(Rate, Rate / 10 + samples.Length + 3 * Rate / 10)];
        samples.CopyTo(padded.AsSpan(Rate / 10));
        int positions = Math.Clamp((padded.Length / SamplesPerPosition + 64) / 64 * 64, LeastContext, 1500);
        fixed (float* first = padded)
        {
            bool done = positions == _positions
                ? WhisperNative.SpectrumWithState(_context, _state, first, padded.Length, _threads) == 0 && WhisperNative.EncodeWithState(_context, _state, 0, _threads) == 0
                : WhisperNative.FullWithState(_context, _state, Whole(positions), first, padded.Length) == 0;
            _positions = done ? positions : 0;
        }

        _cached.Clear();
        if (_positions == 0)
        {
            throw new RecogniserUnavailableException("The speech library failed on a recording; start the program again.");
        }
    }

    /// <summary>A whole call of the engine: the only way to tell it over how many positions it shall encode.</summary>
    FullParams Whole(int positions)
    {
        FullParams parameters = WhisperNative.FullDefaultParams(WhisperNative.Greedy);
        parameters.Threads = _threads;
        parameters.Language = _language;
        parameters.NoTimestamps = 1;
        parameters.NoContext = 1;
        parameters.SingleSegment = 1;
        parameters.MaxTokens = 1;
        parameters.AudioContext = positions;
        parameters.TemperatureIncrement = 0;
        parameters.LogProbabilityThreshold = -100;
        parameters.NoSpeechThreshold = 1;
        parameters.GreedyBestOf = 1;
        return parameters;
    }

    /// <summary>The place before the first word of the sound taken in last.</summary>
    public Prefix Begin() => new(this, _opening);

    /// <summary>The model's own probability that nobody speaks in the sound taken in last.</summary>
    /// <param name="start">Before the first word.</param>
    public double NoSpeech(Prefix start)
    {
        ReadOnlySpan<int> opening = start.Opening.AsSpan(0, Array.IndexOf(start.Opening, _opening[0]) + 1);
        _cached.Clear();
        Decode(opening, 0);
        int size = WhisperNative.VocabularySize(_context);
        float* logits = WhisperNative.LogitsFromState(_state) + (long)(opening.Length - 1) * size;
        return Math.Exp(logits[WhisperNative.TokenNoSpeech(_context)] - LogSumExp(new ReadOnlySpan<float>(logits, size)));
    }

    /// <summary>Log-probabilities of all ordinary tokens and the end after a prefix.</summary>
    float[] Row(Prefix prefix)
    {
        int[] wanted = [.. prefix.Opening, .. prefix.Tokens()];
        int common = 0;
        while (common < wanted.Length - 1 && common < _cached.Count && _cached[common] == wanted[common])
        {
            common++;
        }

        _cached.RemoveRange(common, _cached.Count - common);
        Decode(wanted.AsSpan(common), common);
        float* logits = WhisperNative.LogitsFromState(_state) + (long)(wanted.Length - common - 1) * WhisperNative.VocabularySize(_context);
        float[] row = _rows.TryPop(out float[]? free) ? free : new float[End + 1];
        new ReadOnlySpan<float>(logits, End + 1).CopyTo(row);
        if (prefix.Length == 0)
        {
            row[Blank] = row[End] = float.NegativeInfinity;
        }

        float sum = (float)LogSumExp(row);
        for (int i = 0; i < row.Length; i++)
        {
            row[i] -= sum;
        }

        return row;
    }

    void Decode(ReadOnlySpan<int> tokens, int past)
    {
        fixed (int* first = tokens)
        {
            if (WhisperNative.DecodeWithState(_context, _state, first, tokens.Length, past, DecodeThreads) != 0)
            {
                throw new RecogniserUnavailableException("The speech library failed while decoding; start the program again.");
            }
        }

        _cached.AddRange(tokens);
    }

    static double LogSumExp(ReadOnlySpan<float> values)
    {
        Vector<float> highest = new(float.NegativeInfinity);
        int width = Vector<float>.Count;
        int whole = values.Length / width * width;
        for (int i = 0; i < whole; i += width)
        {
            highest = Vector.Max(highest, new Vector<float>(values[i..]));
        }

        float top = float.NegativeInfinity;
        for (int i = 0; i < width; i++)
        {
            top = Math.Max(top, highest[i]);
        }

        foreach (float value in values[whole..])
        {
            top = Math.Max(top, value);
        }

        Vector<float> sums = Vector<float>.Zero;
        for (int i = 0; i < whole; i += width)
        {
            sums += Vector.Exp(new Vector<float>(values[i..]) - new Vector<float>(top));
        }

        double sum = Vector.Sum(sums);
        foreach (float value in values[whole..])
        {
            sum += Math.Exp(value - top);
        }

        return top + Math.Log(sum);
    }

    byte[] TextOf(int token)
    {
        byte* text = WhisperNative.TokenToString(_context, token);
        int length = 0;
        while (text[length] != 0)
        {
            length++;
        }

        return new ReadOnlySpan<byte>(text, length).ToArray();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        WhisperNative.FreeState(_state);
        WhisperNative.Free(_context);
        System.Runtime.InteropServices.Marshal.FreeCoTaskMem(_language);
    }
}
