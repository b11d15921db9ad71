using System.Buffers.Binary;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>The parts of a RIFF WAVE file that matter: how samples are written, and the samples.</summary>
sealed class RiffWave
{
    /// <summary>Format tag of integer samples.</summary>
    public const short IntegerSamples = 1;

    const short FloatSamples = 3;
    const short TagInExtension = -2;

    readonly byte[] _bytes;
    readonly string _path;
    readonly short _tag;
    readonly int _channels;
    readonly int _bits;
    readonly Range _data;

    RiffWave(byte[] bytes, string path, int format, Range data)
    {
        (_bytes, _path, _data) = (bytes, path, data);
        short tag = BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(format));
        _channels = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(format + 2));
        Rate = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(format + 4));
        _bits = BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(format + 14));
        // In the extended form the true tag is the start of an identifier at offset 24 of the format chunk.
        bool extended = tag == TagInExtension && BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(format - 4)) >= 40;
        _tag = extended ? BinaryPrimitives.ReadInt16LittleEndian(bytes.AsSpan(format + 24)) : tag;
    }

    /// <summary>Samples per second of one channel.</summary>
    public int Rate { get; }

    /// <summary>How long the sound is.</summary>
    public double Seconds => (double)_bytes.AsSpan(_data).Length / (_bits / 8 * _channels) / Rate;

    /// <summary>Finds format and samples, or says in one sentence why not.</summary>
    public static RiffWave Parse(byte[] bytes, string path)
    {
        if (bytes.Length == 0)
        {
            throw new SoundFileException($"{path} is empty; record it again.");
        }

        if (bytes.Length < 12 || !bytes.AsSpan(0, 4).SequenceEqual("RIFF"u8) || !bytes.AsSpan(8, 4).SequenceEqual("WAVE"u8))
        {
            throw new SoundFileException($"{path} is not a WAV file (RIFF WAVE); convert it to 16-bit WAV.");
        }

        int format = 0;
        for (long at = 12; at + 8 <= bytes.Length;)
        {
            ReadOnlySpan<byte> name = bytes.AsSpan((int)at, 4);
            uint size = BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan((int)at + 4));
            at += 8;
            if (name.SequenceEqual("fmt "u8) && size >= 16 && at + size <= bytes.Length)
            {
                format = (int)at;
            }
            else if (name.SequenceEqual("data"u8))
            {
                return format == 0
                    ? throw new SoundFileException($"{path} has sound but no usable format chunk before it; convert it to 16-bit WAV.")
                    : new RiffWave(bytes, path, format, Extent(bytes, (int)at, size, path)).Checked();
            }

            at += size + (size & 1);
        }

        throw new SoundFileException($"{path} ends before its sound begins: the header is cut short; copy or record the file again.");
    }

    /// <summary>The mean of the channels, between -1 and 1.</summary>
    public float[] MonoSamples()
    {
        int bytesEach = _bits / 8;
        ReadOnlySpan<byte> data = _bytes.AsSpan(_data);
        float[] mono = new float[data.Length / (bytesEach * _channels)];
        for (int i = 0; i < mono.Length; i++)
        {
            double sum = 0;
            for (int channel = 0; channel < _channels; channel++)
            {
                sum += Sample(data[((i * _channels + channel) * bytesEach)..]);
            }

            mono[i] = (float)(sum / _channels);
            if (!float.IsFinite(mono[i]))
            {
                throw new SoundFileException($"{_path} holds a sample that is not a number, at {(double)i / Rate:0.000} s; convert it to 16-bit WAV.");
            }
        }

        return mono;
    }

    double Sample(ReadOnlySpan<byte> at) => (_tag, _bits) switch
    {
        (FloatSamples, 32) => BinaryPrimitives.ReadSingleLittleEndian(at),
        (FloatSamples, _) => BinaryPrimitives.ReadDoubleLittleEndian(at),
        (_, 8) => (at[0] - 128) / 128.0,
        (_, 16) => BinaryPrimitives.ReadInt16LittleEndian(at) / 32768.0,
        (_, 24) => ((at[0] << 8 | at[1] << 16 | at[2] << 24) >> 8) / 8388608.0,
        _ => BinaryPrimitives.ReadInt32LittleEndian(at) / 2147483648.0,
    };

    // A file written to a pipe cannot know its length and states 0 or a number near 2 or 4 GiB; its sound then reaches to the end.
    static Range Extent(byte[] bytes, int start, uint stated, string path)
    {
        int there = bytes.Length - start;
        bool unknown = stated == 0 || stated >= 0x7FFF_0000;
        return unknown || stated <= there
            ? start..(unknown ? bytes.Length : start + (int)stated)
            : throw new SoundFileException($"{path} is cut short: it should hold {stated} bytes of sound and holds {there}; copy or record the file again.");
    }

    RiffWave Checked()
    {
        bool known = (_tag, _bits) is (IntegerSamples, 8 or 16 or 24 or 32) or (FloatSamples, 32 or 64);
        if (!known)
        {
            throw new SoundFileException($"{_path} is compressed or of an unusual kind (format {_tag}, {_bits} bits); convert it to 16-bit WAV.");
        }

        if (_channels is 0 or > 64 || Rate is < 1000 or > 768_000)
        {
            throw new SoundFileException($"{_path} states {_channels} channels and {Rate} samples per second, which cannot be; convert it to 16-bit WAV.");
        }

        return _bytes.AsSpan(_data).Length >= _bits / 8 * _channels ? this : throw new SoundFileException($"{_path} holds no sound; record it again.");
    }
}
