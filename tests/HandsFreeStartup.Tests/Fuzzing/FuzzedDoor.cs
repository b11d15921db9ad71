using System.Text;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>What came of one input.</summary>
/// <param name="IsTaken">Whether it was taken; what is refused is refused with a sentence.</param>
/// <param name="Said">The sentence, or in a few words what was taken. An input with which something new is said is changed further.</param>
public readonly record struct Outcome(bool IsTaken, string Said);

/// <summary>A place where something from outside comes in, tried with inputs that nobody would write.</summary>
/// <param name="name">For the command line and for the folder of its corpus.</param>
public abstract class FuzzedDoor(string name) : IDisposable
{
    IReadOnlyList<byte[]>? _corpus;

    /// <summary>For what the inputs need on the disk.</summary>
    protected string Folder { get; } = Directory.CreateTempSubdirectory("handsfree-").FullName;

    public string Name => name;

    /// <summary>Inputs to begin with. What once broke the door lies in its folder of the corpus, and is tried first for ever.</summary>
    public IReadOnlyList<byte[]> Corpus => _corpus ??= [.. Kept(), .. Seeds()];

    /// <summary>Words that mean something here.</summary>
    public virtual IReadOnlyList<string> Words => [];

    /// <summary>Tries one input; anything that is thrown, or a failed assertion, is a defect.</summary>
    /// <param name="input">Bytes, or UTF-8 text.</param>
    /// <param name="random">Decides what else is tried with it.</param>
    public abstract Outcome Try(byte[] input, Random random);

    public void Dispose()
    {
        Directory.Delete(Folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected abstract IEnumerable<byte[]> Seeds();

    protected string In(string file) => Path.Combine(Folder, file);

    /// <summary>Text as it is read from a file or a terminal.</summary>
    protected static string TextOf(byte[] input) => Encoding.UTF8.GetString(input);

    protected static byte[] BytesOf(string text) => Encoding.UTF8.GetBytes(text);

    /// <summary>Lines of a file of the corpus.</summary>
    protected static IEnumerable<byte[]> LinesOf(string file) => File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Fuzzing", "Corpus", file)).Select(BytesOf);

    IEnumerable<byte[]> Kept()
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "Fuzzing", "Corpus", name);
        return Directory.Exists(folder) ? Directory.GetFiles(folder).Order(StringComparer.Ordinal).Select(File.ReadAllBytes) : [];
    }
}
