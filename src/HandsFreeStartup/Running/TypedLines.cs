using System.Text;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Running;

/// <summary>Lines that are typed or come through a pipe. However long a line is, only its beginning is kept, so that an endless one does not fill the memory.</summary>
public sealed class TypedLines
{
    /// <summary>One more than any text may have, so that whoever reads it sees that it is too long.</summary>
    const int Most = TextLength.Note + 1;

    readonly TextReader _input;
    readonly bool _isTerminal;
    readonly char[] _buffer = new char[4096];
    int _at;
    int _filled;
    Task<string?>? _ahead;

    TypedLines(TextReader input, bool isTerminal) => (_input, _isTerminal) = (input, isTerminal);

    /// <summary>Lines of a pipe or a file.</summary>
    public static TypedLines Of(TextReader input) => new(input, isTerminal: false);

    /// <summary>Lines of a person, whose terminal bounds them.</summary>
    public static TypedLines AtTerminal(TextReader console) => new(console, isTerminal: true);

    /// <summary>Whether somebody types, or a line has come; nobody waits for either.</summary>
    public bool IsComing => _isTerminal ? Console.KeyAvailable : (_ahead ??= Task.Run(Read)).IsCompleted;

    /// <summary>The next line, or null at the end.</summary>
    public string? Next()
    {
        Task<string?>? ahead = _ahead;
        _ahead = null;
        return ahead is null ? Read() : ahead.GetAwaiter().GetResult();
    }

    string? Read()
    {
        if (_isTerminal)
        {
            return _input.ReadLine();
        }

        StringBuilder? line = null;
        while (_at < _filled || Fill())
        {
            line ??= new StringBuilder();
            ReadOnlySpan<char> rest = _buffer.AsSpan(_at, _filled - _at);
            int end = rest.IndexOf('\n');
            ReadOnlySpan<char> part = end < 0 ? rest : rest[..end];
            line.Append(part[..Math.Min(part.Length, Most - line.Length)]);
            _at += end < 0 ? rest.Length : end + 1;
            if (end >= 0)
            {
                break;
            }
        }

        return line?.ToString().TrimEnd('\r');
    }

    bool Fill()
    {
        (_at, _filled) = (0, Math.Max(0, _input.Read(_buffer, 0, _buffer.Length)));
        return _filled > 0;
    }
}
