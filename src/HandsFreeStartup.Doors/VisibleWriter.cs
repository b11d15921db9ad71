using System.Text;

namespace HandsFreeStartup.Doors;

/// <summary>
/// Writes to a person's terminal: everything through <see cref="VisibleText"/>. A text given to <c>WriteLine</c> is one line whatever it holds, so that no name can begin a line of
/// its own; what has several lines is given to <c>Write</c>.
/// </summary>
/// <param name="inner">Takes the text.</param>
public sealed class VisibleWriter(TextWriter inner) : TextWriter(inner.FormatProvider)
{
    /// <inheritdoc/>
    public override Encoding Encoding => inner.Encoding;

    /// <inheritdoc/>
    public override void Write(char value) => inner.Write(VisibleText.OfLines(value.ToString()));

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<char> buffer)
    {
        if (VisibleText.IsVisible(buffer))
        {
            inner.Write(buffer);
        }
        else
        {
            inner.Write(VisibleText.OfLines(buffer.ToString()));
        }
    }

    /// <inheritdoc/>
    public override void Write(string? value) => Write(value.AsSpan());

    /// <inheritdoc/>
    public override void WriteLine(string? value) => inner.Write($"{VisibleText.Of(value ?? "")}\n");

    /// <inheritdoc/>
    public override void WriteLine(ReadOnlySpan<char> buffer) => WriteLine(buffer.ToString());

    /// <inheritdoc/>
    public override void WriteLine() => inner.Write('\n');

    /// <inheritdoc/>
    public override Task WriteLineAsync(string? value)
    {
        WriteLine(value);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override void Flush() => inner.Flush();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
