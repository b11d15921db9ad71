using System.Buffers.Binary;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Sound as it is kept: 16-bit WAV, one channel, 16 kHz.</summary>
static class RecordedSound
{
    const int Rate = 16_000;
    const int HeaderBytes = 44;

    /// <summary>RIFF/WAVE with the canonical 44-byte header, format tag 1 (PCM).</summary>
    public static byte[] Wav(ReadOnlySpan<float> samples)
    {
        byte[] wav = new byte[HeaderBytes + 2 * samples.Length];
        Span<byte> bytes = wav;
        "RIFF"u8.CopyTo(bytes);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[4..], wav.Length - 8);
        "WAVEfmt "u8.CopyTo(bytes[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(bytes[20..], 1);
        BinaryPrimitives.WriteInt16LittleEndian(bytes[22..], 1);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[24..], Rate);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[28..], 2 * Rate);
        BinaryPrimitives.WriteInt16LittleEndian(bytes[32..], 2);
        BinaryPrimitives.WriteInt16LittleEndian(bytes[34..], 16);
        "data"u8.CopyTo(bytes[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[40..], 2 * samples.Length);
        for (int i = 0; i < samples.Length; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(bytes[(HeaderBytes + 2 * i)..], (short)Math.Clamp(MathF.Round(samples[i] * 32768f), short.MinValue, short.MaxValue));
        }
        return wav;
    }
}
