using System.Runtime.InteropServices;
using System.Text;

namespace HandsFreeStartup.Running;

/// <summary>Standard output is gone, or takes nothing more; nobody sees what is written.</summary>
/// <param name="why">The system's word for it.</param>
public sealed class OutputGoneException(string why) : IOException($"Standard output takes nothing more ({why}): run it again with an output that is open and has room.");

/// <summary>
/// Standard input, output and error as they were handed over. Where one was not, its number may by now belong to a file of the program's own (a record, a pipe of the runtime), into
/// which nothing may be written. Unlike the console's own stream, this one tells that its reader is gone.
/// </summary>
public static partial class StandardStreams
{
    const int GetDescriptorFlags = 1;
    const int ClosesOnExecute = 1;
    const int Interrupted = 4;
    const int TryAgain = 11;

    /// <summary>For data. Writing to it throws <see cref="OutputGoneException"/> where nobody can read it.</summary>
    public static TextWriter Output { get; } = Writer(1);

    /// <summary>For messages; what cannot be written is lost.</summary>
    public static TextWriter Error { get; } = Writer(2);

    /// <summary>What is typed, line by line; empty where nothing was handed over.</summary>
    public static TypedLines Input { get; } = !IsHandedOver(0) ? TypedLines.Of(TextReader.Null)
        : Console.IsInputRedirected ? TypedLines.Of(new StreamReader(Console.OpenStandardInput()))
        : TypedLines.AtTerminal(Console.In);

    /// <summary>Only what was handed over outlives the start of a program; whatever it opens itself would not.</summary>
    static bool IsHandedOver(int descriptor) => !OperatingSystem.IsLinux() || Control(descriptor, GetDescriptorFlags, 0) is >= 0 and var flags && (flags & ClosesOnExecute) == 0;

    static StreamWriter Writer(int descriptor) => new(Sink(descriptor), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true, NewLine = "\n" };

    static Stream Sink(int descriptor) => OperatingSystem.IsLinux() ? new Handed(descriptor, IsHandedOver(descriptor))
        : descriptor == 1 ? Console.OpenStandardOutput()
        : Console.OpenStandardError();

    sealed partial class Handed(int descriptor, bool isThere) : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            if (!isThere)
            {
                Lose("it is closed");
                return;
            }

            while (!buffer.IsEmpty)
            {
                nint written = WriteSome(descriptor, ref MemoryMarshal.GetReference(buffer), buffer.Length);
                int error = written < 0 ? Marshal.GetLastPInvokeError() : 0;
                if (error is not (0 or Interrupted or TryAgain))
                {
                    Lose(Marshal.GetPInvokeErrorMessage(error));
                    return;
                }

                buffer = buffer[(int)Math.Max(0, written)..];
            }
        }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        void Lose(string why)
        {
            if (descriptor == 1)
            {
                throw new OutputGoneException(why);
            }
        }
    }

    [LibraryImport("libc", EntryPoint = "write", SetLastError = true)]
    private static partial nint WriteSome(int descriptor, ref byte bytes, nint count);

    [LibraryImport("libc", EntryPoint = "fcntl")]
    private static partial int Control(int descriptor, int command, int value);
}
