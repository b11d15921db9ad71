using System.Globalization;
using System.Numerics;
using System.Runtime.Intrinsics;

namespace HandsFreeStartup.Compute;

/// <summary>Writes a number with the fewest digits that read back as the same number: what the framework writes for "R", digit by digit, in a third of its time.</summary>
/// <remarks>
/// A table of a million rows is mostly the writing of its numbers. Method: Raffaele Giulietti, The Schubfach way to render doubles (2020), here for 0.0001 up to 2^49, where the
/// framework writes no exponent and a power of ten fits into 126 bits exactly; the framework writes everything else. A test compares both.
/// </remarks>
static class ShortestNumber
{
    /// <summary>Bytes that a number may need while it is written.</summary>
    public const int Room = 48;

    const double Least = 1e-4, Most = 1L << 49;
    const int MantissaBits = 52, ExponentBias = 1075, MostDecimals = 22;
    const ulong Low63 = long.MaxValue;

    static ReadOnlySpan<byte> Pairs =>
        "0001020304050607080910111213141516171819202122232425262728293031323334353637383940414243444546474849"u8
        + "5051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"u8;

    static readonly (ulong High, ulong Low)[] Powers = [.. Enumerable.Range(0, MostDecimals + 1).Select(Power)];
    static readonly ulong[] Tens = [.. Enumerable.Range(0, 20).Select(power => (ulong)UInt128Power(power))];

    /// <summary>Writes the number in UTF-8.</summary>
    /// <param name="value">Finite.</param>
    /// <param name="text"><see cref="Room"/> bytes.</param>
    /// <returns>How many bytes were written.</returns>
    public static int Write(double value, Span<byte> text)
    {
        double size = Math.Abs(value);
        if (!(size is >= Least and < Most))
        {
            value.TryFormat(text, out int written, provider: CultureInfo.InvariantCulture);
            return written;
        }
        (ulong digits, int decimals) = Shortest(BitConverter.DoubleToUInt64Bits(size));
        text[0] = (byte)'-';
        int start = value < 0 ? 1 : 0;
        return start + Write(digits, decimals, text[start..]);
    }

    static int Write(ulong digits, int decimals, Span<byte> text)
    {
        int count = Count(digits);
        int whole = count - decimals;
        if (whole <= 0)
        {
            "0.000000"u8.CopyTo(text);
            WriteDigits(digits, text.Slice(2 - whole, count));
            return 2 + decimals;
        }
        WriteDigits(digits, text[..count]);
        if (decimals == 0)
        {
            return count;
        }
        // At most sixteen digits stand behind one that stands before the point.
        Vector128<byte> behind = Vector128.Create<byte>(text.Slice(whole, Vector128<byte>.Count));
        text[whole] = (byte)'.';
        behind.CopyTo(text[(whole + 1)..]);
        return count + 1;
    }

    static void WriteDigits(ulong digits, Span<byte> text)
    {
        int last = text.Length;
        for (; last > 8; last -= 8)
        {
            (digits, ulong eight) = Math.DivRem(digits, 100_000_000);
            WriteSmall((uint)eight, text.Slice(last - 8, 8));
        }
        WriteSmall((uint)digits, text[..last]);
    }

    static void WriteSmall(uint digits, Span<byte> text)
    {
        int last = text.Length;
        for (; last > 1; last -= 2)
        {
            (digits, uint pair) = Math.DivRem(digits, 100);
            Pairs.Slice(2 * (int)pair, 2).CopyTo(text[(last - 2)..]);
        }
        if (last > 0)
        {
            text[0] = (byte)('0' + digits);
        }
    }

    static int Count(ulong digits)
    {
        // 1233/4096 is a little above the common logarithm of two.
        int count = (BitOperations.Log2(digits) + 1) * 1233 >> 12;
        return digits >= Tens[count] ? count + 1 : count;
    }

    /// <summary>The number as digits · 10^−decimals, the digits without zeros behind the point.</summary>
    static (ulong Digits, int Decimals) Shortest(ulong bits)
    {
        int exponent = (int)(bits >> MantissaBits) - ExponentBias;
        ulong fraction = bits & ((1UL << MantissaBits) - 1);
        ulong mantissa = fraction | (1UL << MantissaBits);
        // Four times the number and the two ends of what reads back as it; below a power of two the gap is half as wide.
        ulong middle = mantissa << 2, upper = middle + 2, lower = middle - (fraction == 0 ? 1UL : 2UL);
        int decimals = -(int)((exponent * 661_971_961_083L - (fraction == 0 ? 274_743_187_321L : 0)) >> 41);
        int shift = exponent + LogTwo(decimals) + 2;
        (ulong high, ulong low) = Powers[decimals];
        ulong at = Product(high, low, middle << shift), from = Product(high, low, lower << shift), to = Product(high, low, upper << shift);
        ulong outside = mantissa & 1;
        ulong below = at >> 2;
        ulong tenBelow = below / 10 * 10;
        bool tenDown = from + outside <= tenBelow << 2, tenUp = ((tenBelow + 10) << 2) + outside <= to;
        if (tenDown != tenUp)
        {
            return Stripped(tenDown ? tenBelow : tenBelow + 10, decimals);
        }
        bool down = from + outside <= below << 2, up = ((below + 1) << 2) + outside <= to;
        if (down != up)
        {
            return Stripped(down ? below : below + 1, decimals);
        }
        long nearer = (long)(at - ((2 * below + 1) << 1));
        return Stripped(nearer < 0 || (nearer == 0 && (below & 1) == 0) ? below : below + 1, decimals);
    }

    static (ulong, int) Stripped(ulong digits, int decimals)
    {
        while (decimals > 0 && digits % 10 == 0)
        {
            digits /= 10;
            decimals--;
        }
        return (digits, decimals);
    }

    /// <summary>The upper part of power · factor, its last bit set where anything below it is not zero.</summary>
    static ulong Product(ulong high, ulong low, ulong factor)
    {
        ulong carried = Math.BigMul(low, factor, out _);
        ulong top = Math.BigMul(high, factor, out ulong bottom);
        ulong rest = (bottom >> 1) + carried;
        return (top + (rest >> 63)) | (((rest & Low63) + Low63) >> 63);
    }

    /// <summary>Whole part of the binary logarithm of a power of ten.</summary>
    static int LogTwo(int power) => (int)((power * 913_124_641_741L) >> 38);

    static (ulong High, ulong Low) Power(int power)
    {
        UInt128 scaled = (UInt128Power(power) << (125 - LogTwo(power))) + 1;
        return ((ulong)(scaled >> 63), (ulong)scaled & Low63);
    }

    static UInt128 UInt128Power(int power) => power == 0 ? 1 : 10 * UInt128Power(power - 1);
}
