using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Fleet;

/// <summary>Where the firm's database is, and as whom one comes to it.</summary>
/// <param name="Host">Name or address, or the folder of the server's socket.</param>
/// <param name="Port">Its port.</param>
/// <param name="User">The login.</param>
/// <param name="Database">Its name there.</param>
/// <param name="Password">Empty where none is needed; never shown.</param>
/// <param name="TrustFile">File of the certificates that are trusted, PEM; null for those of the system.</param>
public sealed partial record FleetAddress(string Host, int Port, string User, string Database, string Password, string? TrustFile)
{
    /// <summary>The variable that holds the password, the same as for every other program of PostgreSQL.</summary>
    public const string PasswordVariable = "PGPASSWORD";

    const int UsualPort = 5432;
    const long MostBytes = 1 << 20;
    const int MostPassword = 1000;
    const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    /// <summary>Whether the server is reached through a socket of this machine, where nothing can listen in between.</summary>
    public bool IsLocal => Host.StartsWith('/');

    /// <summary>As shown: without the password.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"postgres://{User}@{(IsLocal ? "" : $"{Host}:{Port}")}/{Database}{(IsLocal ? $"?host={Host}" : "")}");

    /// <summary>Reads an address, and the password from where it is kept.</summary>
    /// <param name="text">Such as <c>postgres://van_07@office.example/firm</c>; <c>?host=/FOLDER</c> names a socket instead of a host.</param>
    /// <param name="trustFile">File of trusted certificates, or null.</param>
    /// <param name="passwordFile">File of the password, which only its owner may read, or null.</param>
    /// <param name="environment">The value of a variable of the environment, or null.</param>
    /// <exception cref="FleetException">It is no address, or the password is kept where it is not safe. The text is not repeated, for a password may be in it.</exception>
    public static FleetAddress Read(string text, string? trustFile, string? passwordFile, Func<string, string?> environment)
    {
        Match match = Shape().Match(text);
        if (match.Groups["password"].Success)
        {
            throw new FleetException($"A password in the address can be read by everybody on this machine: leave it out, and put it into the variable {PasswordVariable} or a file of mode 600 named with --password-file.");
        }

        (string user, string database, string query) = (Decoded(match, "user"), Decoded(match, "database"), match.Groups["query"].Value);
        string host = query.StartsWith("host=/", StringComparison.Ordinal) ? Uri.UnescapeDataString(query["host=".Length..]) : Decoded(match, "host").Trim('[', ']');
        if (!match.Success || user.Length == 0 || database.Length == 0 || host.Length == 0 || (query.Length > 0 && !host.StartsWith('/')) || PortOf(match) is not { } port)
        {
            throw new FleetException("That is no address of a database. Write it like postgres://van_07@office.example:5432/firm, with the login before the @ and the name of the database at the end.");
        }

        if (trustFile is not null)
        {
            RegularFile.Check(trustFile, MostBytes);
        }

        return new FleetAddress(host, port, user, database, passwordFile is null ? environment(PasswordVariable) ?? "" : PasswordIn(passwordFile), trustFile);
    }

    static string Decoded(Match match, string part) => Uri.UnescapeDataString(match.Groups[part].Value);

    static int? PortOf(Match match) => !match.Groups["port"].Success ? UsualPort
        : int.TryParse(match.Groups["port"].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port is > 0 and < 65536 ? port
        : null;

    static string PasswordIn(string file)
    {
        try
        {
            // The system that knows no such modes keeps a user's files to that user by other means.
            if (!OperatingSystem.IsWindows() && File.Exists(file) && (File.GetUnixFileMode(file) & Others) != 0)
            {
                throw new FleetException($"The password in {file} can be read by others on this machine: run chmod 600 on it.");
            }

            string password = Encoding.UTF8.GetString(RegularFile.ReadAll(file, MostPassword)).TrimEnd('\r', '\n');
            return password.Length > 0 && !password.Contains('\n') && !password.Contains('\0')
                ? password
                : throw new FleetException($"The file {file} holds no password: write it as its only line.");
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new FleetException(FileTrouble.Sentence(error, $"The password file {file} cannot be read", "name another one with --password-file"), cause: error);
        }
    }

    [GeneratedRegex(@"^postgres(ql)?://(?:(?<user>[^:@/?]*)(?<password>:[^/?]*)?@)?(?<host>\[[0-9A-Fa-f:.]+\]|[^:/?@\[\]]*)(?::(?<port>[0-9]{1,9}))?/(?<database>[^/?]*)(?:\?(?<query>.*))?$", RegexOptions.Singleline)]
    private static partial Regex Shape();
}
