using System.Collections.Immutable;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Languages;

/// <summary>The languages that lie beside the program: each is a file named for its code.</summary>
public static class LanguageFiles
{
    const string Ending = ".po";

    static readonly ImmutableArray<string> NoFiles = [];

    /// <summary>The codes of all that are there, English first.</summary>
    public static ImmutableArray<string> Codes =>
        [Language.English.Code, .. (Directory.Exists(ShippedFiles.Languages) ? [.. Directory.GetFiles(ShippedFiles.Languages, $"*{Ending}")] : NoFiles).Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    /// <summary>A language.</summary>
    /// <param name="code">As it was chosen; null for English.</param>
    /// <exception cref="WrongUseException">It is not there, or its file is wrong.</exception>
    public static Language Find(string? code)
    {
        if (code is null || code == Language.English.Code)
        {
            return Language.English;
        }

        if (!Codes.Contains(code))
        {
            throw new WrongUseException($"There is no language \"{code}\". Choose one of: {string.Join(", ", Codes)}. Another one is a file CODE{Ending} in {ShippedFiles.Languages}.");
        }

        return Read(Path.Combine(ShippedFiles.Languages, $"{code}{Ending}"));
    }

    /// <summary>The language of a file.</summary>
    public static Language Read(string path)
    {
        try
        {
            string code = Path.GetFileNameWithoutExtension(path);
            PoFile file = PoFile.Read(path, File.ReadAllText(path));
            return new Language(code, file.Texts) { Voice = file.Head.GetValueOrDefault("X-Voice", code) };
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"The language file {path} cannot be read", "copy the whole program again"));
        }
    }
}
