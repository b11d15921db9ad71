using System.Diagnostics;
using System.Security.Cryptography;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Tests.Surroundings;

/// <summary>A folder with everything that commands need, sound, and with the places that they may be led into. It tells afterwards whether anything in it was lost.</summary>
public sealed class HostilePlace : IDisposable
{
    static readonly Lazy<byte[]> Job = new(() =>
    {
        string path = System.IO.Path.Combine(Directory.CreateTempSubdirectory("handsfree-").FullName, "job.db");
        FixtureJob.Write(path);
        byte[] job = File.ReadAllBytes(path);
        Directory.Delete(System.IO.Path.GetDirectoryName(path)!, recursive: true);
        return job;
    });

    readonly Dictionary<string, string> _before;

    public HostilePlace()
    {
        Path = Directory.CreateTempSubdirectory("handsfree-").FullName;
        Directory.CreateDirectory(In("data", "jobs"));
        File.WriteAllBytes(In("data", "jobs", "job.db"), Job.Value);
        Directory.CreateDirectory(In("out"));
        foreach (string kept in (string[])["out/job-appliance.pdf", "out/job-narrow.txt", "out/table.csv", "out/sheet.yaml", "out/picture.png"])
        {
            File.WriteAllText(In(kept.Split('/')), "kept from before");
        }

        File.WriteAllText(In("checklist.yaml"), Fixture.Checklist.Text);
        File.WriteAllText(In("appliance.yaml"), Fixture.Appliance.Text);
        File.WriteAllText(In("site.yaml"), Fixture.Site.Text);
        File.WriteAllText(In("readings.csv"), "geopotential_altitude_m\n0\n1524\n");
        File.WriteAllText(In("combustion.csv"), "fuel,oxygen_dry_percent,flue_temperature_C,combustion_air_temperature_C,combustion_air_relative_humidity_percent,carbon_monoxide_dry_ppm,pressure_Pa\nnatural-gas,7.6,164,21,0,12,101325\n");
        WavFile.Write(In("sound.wav"), new float[16_000]);
        WavFile.Write(In("noise.wav"), new float[16_000]);
        File.WriteAllText(In("manifest.tsv"), "sound.wav\tnothing\topen\n");
        Make();
        _before = Contents();
    }

    public string Path { get; }

    /// <summary>A path in the folder.</summary>
    public string In(params string[] names) => System.IO.Path.Combine([Path, .. names]);

    /// <summary>Words of a command line: %name stands for a place in the folder, %%name for one that is hostile.</summary>
    public string[] Filled(string command) => [.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Filled1)];

    /// <summary>What was there before and is not as it was.</summary>
    public IReadOnlyList<string> Lost()
    {
        Dictionary<string, string> now = Contents();
        return [.. _before.Where(file => now.GetValueOrDefault(file.Key) != file.Value).Select(file => file.Key)];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);

    string Filled1(string word) => word switch
    {
        "%%empty-name" => "",
        "%%nul" => In("a\0b.yaml"),
        "%%too-long" => In(new string('a', 300)),
        "%%much-too-long" => In(new string('a', 5000)),
        "%%device" => "/dev/zero",
        "%%full" => "/dev/full",
        "%%in-a-file" => "/etc/passwd/x.yaml",
        "%%in-proc" => "/proc/none/x.yaml",
        "%%missing-folder" => In("nowhere", "x.yaml"),
        _ when word.StartsWith("%%", StringComparison.Ordinal) => In("hostile", word[2..]),
        _ when word.StartsWith('%') => In(word[1..].Split('/')),
        _ => word,
    };

    void Make()
    {
        string hostile = Directory.CreateDirectory(In("hostile")).FullName;
        Directory.CreateDirectory(System.IO.Path.Combine(hostile, "folder"));
        using (Process make = Process.Start("mkfifo", [System.IO.Path.Combine(hostile, "pipe")]))
        {
            make.WaitForExit();
        }

        File.CreateSymbolicLink(System.IO.Path.Combine(hostile, "circle"), System.IO.Path.Combine(hostile, "circle"));
        File.CreateSymbolicLink(System.IO.Path.Combine(hostile, "to-readings"), In("readings.csv"));
        File.CreateSymbolicLink(System.IO.Path.Combine(hostile, "to-zero"), "/dev/zero");
        File.CreateSymbolicLink(System.IO.Path.Combine(hostile, "to-pipe"), System.IO.Path.Combine(hostile, "pipe"));
        File.CreateSymbolicLink(System.IO.Path.Combine(hostile, "to-nowhere"), In("nowhere", "at-all"));
        using (FileStream sparse = File.Create(System.IO.Path.Combine(hostile, "large")))
        {
            sparse.SetLength(20L << 30);
        }

        File.WriteAllBytes(System.IO.Path.Combine(hostile, "empty"), []);
        File.WriteAllBytes(System.IO.Path.Combine(hostile, "bytes"), [.. Enumerable.Range(0, 4096).Select(i => (byte)(255 - i % 256))]);
        File.WriteAllText(System.IO.Path.Combine(hostile, "endless-line"), new string('x', 900_000));
        File.WriteAllText(System.IO.Path.Combine(hostile, "nul-path.tsv"), "a\0b.wav\tnothing\topen\n");
        File.WriteAllText(System.IO.Path.Combine(hostile, "pipe-path.tsv"), "pipe\tnothing\topen\n");
    }

    Dictionary<string, string> Contents() => Directory.EnumerateFiles(Path, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint })
        .Where(file => Doors.FileStatus.Of(file) is { Kind: Doors.FileKind.Regular, Bytes: < 1 << 20 } && !file.Contains("review-index", StringComparison.Ordinal))
        .ToDictionary(file => file, file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))));
}
