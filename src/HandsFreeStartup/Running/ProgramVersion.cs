using System.Reflection;
using System.Security.Cryptography;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Running;

/// <summary>What <c>--version</c> tells: everything on which a record depends that comes with the program.</summary>
static class ProgramVersion
{
    /// <summary>Version with commit, as it stands in the first event of a record: "0.2.0+8c0d7d9c...".</summary>
    public static string Informational => typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>Version, commit, models and checklists, a line each.</summary>
    /// <exception cref="WrongUseException">The folders of the program are not there.</exception>
    public static IEnumerable<string> Lines()
    {
        string[] parts = Informational.Split('+');
        yield return $"HandsFree Startup {parts[0]}";
        yield return $"commit    {(parts.Length > 1 ? parts[1] : "unknown")}";
        foreach (string file in Files(ShippedFiles.Models, "*.bin").Concat(Files(ShippedFiles.Checklists, "*.yaml")))
        {
            yield return $"{(file.EndsWith(".bin", StringComparison.Ordinal) ? "model    " : "checklist")} {Path.GetFileName(file)} sha256 {Hash(file)}";
        }
    }

    static IEnumerable<string> Files(string folder, string pattern) => Directory.GetFiles(folder, pattern).Order(StringComparer.Ordinal);

    static string Hash(string file)
    {
        try
        {
            using FileStream stream = File.OpenRead(file);
            return Convert.ToHexStringLower(SHA256.HashData(stream));
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            return "unreadable";
        }
    }
}
