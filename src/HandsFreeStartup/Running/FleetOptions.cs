using System.CommandLine;
using HandsFreeStartup.Fleet;

namespace HandsFreeStartup.Running;

/// <summary>How every command finds the firm's database.</summary>
static class FleetOptions
{
    /// <summary>Where to publish.</summary>
    public static Option<string?> To { get; } = new("--to") { Description = "The firm's database: postgres://LOGIN@HOST[:PORT]/DATABASE. The password comes from PGPASSWORD or --password-file.", HelpName = "ADDRESS" };

    /// <summary>Where to read.</summary>
    public static Option<string?> From { get; } = new("--from") { Description = "The firm's database instead of files: postgres://LOGIN@HOST[:PORT]/DATABASE.", HelpName = "ADDRESS" };

    /// <summary>Whom to trust.</summary>
    public static Option<string?> Trust { get; } = new("--trust") { Description = "Certificates that are trusted instead of the system's (PEM): those of the firm's own authority.", HelpName = "FILE" };

    /// <summary>Where the password is.</summary>
    public static Option<string?> PasswordFile { get; } = new("--password-file") { Description = "File of mode 600 with the password, instead of the variable PGPASSWORD.", HelpName = "FILE" };

    /// <summary>The address that was given.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="address">As given.</param>
    /// <exception cref="FleetException">It is none.</exception>
    public static FleetAddress Address(ParseResult parsed, string address) =>
        FleetAddress.Read(address, parsed.GetValue(Trust), parsed.GetValue(PasswordFile), Environment.GetEnvironmentVariable);
}
