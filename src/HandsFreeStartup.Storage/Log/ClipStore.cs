using System.Buffers.Binary;
using System.Security.Cryptography;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.Log;

/// <summary>
/// Keeps what was heard beside the log, as 16-bit WAV, one channel, 16 kHz. A clip is named by the SHA-256 of its bytes, so the event that names it
/// holds its hash; <c>sha256sum</c> checks it too. Keep the clip before the event that names it is appended.
/// </summary>
/// <param name="jobPath">The job's file; the clips lie in the folder <c>.clips</c> beside it.</param>
public sealed class ClipStore(string jobPath)
{
    /// <summary>Samples a second.</summary>
    public const int Rate = 16_000;

    const int HeaderBytes = 44;

    /// <summary>The folder of the clips of a job.</summary>
    public static string FolderOf(string jobPath) => $"{jobPath}.clips";

    /// <summary>Writes a clip to the disk and returns its name.</summary>
    /// <param name="samples">16 kHz, one channel, -1 to 1; what is beyond is clipped.</param>
    /// <exception cref="LogException">It cannot be written.</exception>
    public string Keep(ReadOnlySpan<float> samples)
    {
        byte[] wav = Wav(samples);
        string name = $"{Convert.ToHexStringLower(SHA256.HashData(wav))}.wav";
        string path = Path.Combine(FolderOf(jobPath), name);
        try
        {
            Directory.CreateDirectory(FolderOf(jobPath));
            if (!File.Exists(path))
            {
                WriteWhole(path, wav);
            }
            return name;
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new LogException(FileTrouble.Sentence(error, $"The recording cannot be kept in {FolderOf(jobPath)}", "put it right and continue with start --resume"), error);
        }
    }

    /// <summary>Full path of a kept clip, or null if it is missing or is no file that a clip can be.</summary>
    public string? Find(string name) => Attachment.IsUsable(StatusOf(name)) ? PathOf(name) : null;

    /// <summary>What lies in the place of a clip.</summary>
    internal FileStatus StatusOf(string name) => Attachment.StatusOf(FolderOf(jobPath), name);

    /// <summary>Where a clip belongs.</summary>
    internal string PathOf(string name) => Path.Combine(FolderOf(jobPath), name);

    /// <summary>A clip under its final name is always whole: it is written and synced under another name first.</summary>
    static void WriteWhole(string path, byte[] wav)
    {
        string unfinished = $"{path}.part";
        using (FileStream file = new(unfinished, FileMode.Create, FileAccess.Write))
        {
            file.Write(wav);
            file.Flush(flushToDisk: true);
        }
        File.Move(unfinished, path, overwrite: true);
    }

    /// <summary>RIFF/WAVE with the canonical 44-byte header, format tag 1 (PCM).</summary>
    static byte[] Wav(ReadOnlySpan<float> samples)
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
