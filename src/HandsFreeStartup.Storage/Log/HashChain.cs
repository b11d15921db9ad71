using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Hashes that tie every event to all before it. A first byte tells the kinds of hash apart, so that none can pass for another.</summary>
static class HashChain
{
    const byte OriginPrefix = 0x00;
    const byte EventPrefix = 0x01;
    const byte PersonalPrefix = 0x02;

    /// <summary>What the first event points back to: the format of the log.</summary>
    public static byte[] Origin(int formatVersion)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData([OriginPrefix]);
        AppendPart(hash, Encoding.UTF8.GetBytes(FormattableString.Invariant($"HandsFree Startup log, format {formatVersion}")));
        return hash.GetHashAndReset();
    }

    /// <summary>The hash of one event over the exact bytes that are stored; lengths are hashed too, so that no byte can move from one part to the next.</summary>
    public static byte[] OfEvent(byte[] previousHash, long sequence, byte[] recordedAt, byte[] kind, byte[] body)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData([EventPrefix]);
        hash.AppendData(previousHash);
        Span<byte> number = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(number, sequence);
        hash.AppendData(number);
        AppendPart(hash, recordedAt);
        AppendPart(hash, kind);
        AppendPart(hash, body);
        return hash.GetHashAndReset();
    }

    /// <summary>The commitment to a personal part that stands apart.</summary>
    public static byte[] OfPersonal(byte[] salt, byte[] content)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData([PersonalPrefix]);
        AppendPart(hash, salt);
        AppendPart(hash, content);
        return hash.GetHashAndReset();
    }

    static void AppendPart(IncrementalHash hash, byte[] part)
    {
        Span<byte> length = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(length, part.Length);
        hash.AppendData(length);
        hash.AppendData(part);
    }
}
