using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>A test that needs PostgreSQL; without it, it is reported as skipped.</summary>
public sealed class PostgresFactAttribute : FactAttribute
{
    public PostgresFactAttribute() => Skip = PostgresServer.IsInstalled ? null! : "not installed: postgresql-15";
}

/// <summary>The same for a test with rows.</summary>
public sealed class PostgresTheoryAttribute : TheoryAttribute
{
    public PostgresTheoryAttribute() => Skip = PostgresServer.IsInstalled ? null! : "not installed: postgresql-15";
}

/// <summary>One server for all tests of a collection.</summary>
[CollectionDefinition(Name)]
public sealed class FirmServer : ICollectionFixture<PostgresServer>
{
    public const string Name = "PostgreSQL";
}

/// <summary>
/// A server of the tests' own in a folder of its own, over TLS with a certificate authority made for it, run by a user without rights. It ends with the tests, by pg_ctl on its own folder.
/// </summary>
public sealed class PostgresServer : IAsyncLifetime
{
    public const string Password = "quarry-pond-7";

    const string Programs = "/usr/lib/postgresql/15/bin";
    static readonly bool IsRoot = Environment.UserName == "root";

    readonly string _folder = Directory.CreateTempSubdirectory("handsfree-firm-").FullName;
    int _databases;

    public static bool IsInstalled => File.Exists($"{Programs}/initdb") && File.Exists("/usr/bin/setpriv");

    public int Port { get; private set; }

    /// <summary>The certificate authority that the server's certificate leads to.</summary>
    public string Trust => Path.Combine(_folder, "authority.crt");

    /// <summary>A file of mode 600 with the password of every login.</summary>
    public string PasswordFile => Path.Combine(_folder, "password");

    /// <summary>Folder for what the server must be able to write to.</summary>
    public string Folder => _folder;

    string Data => Path.Combine(_folder, "data");

    public async Task InitializeAsync()
    {
        if (!IsInstalled)
        {
            return;
        }

        Port = FreePort();
        File.WriteAllText(PasswordFile, $"{Password}\n");
        File.SetUnixFileMode(PasswordFile, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Give(_folder);
        await Run("initdb", "-D", Data, "-U", "postgres", "-E", "UTF8", "--locale=C", "--auth=trust", "--no-sync");
        TestCertificates.Write(_folder);
        foreach (string name in (string[])["server.crt", "server.key", "other.crt", "other.key", "old.crt", "old.key"])
        {
            Give(Path.Combine(_folder, name));
        }

        UseCertificate("server");
        await File.WriteAllTextAsync(Path.Combine(Data, "pg_hba.conf"), "local all all trust\nhostssl all all 127.0.0.1/32 scram-sha-256\n");
        await Start();
        await Administer(
            $"""
            create role firm_owner login createrole createdb password '{Password}';
            create role van_01 login password '{Password}'; create role van_02 login password '{Password}'; create role van_03 login password '{Password}';
            create role office_north login password '{Password}'; create role office_south login password '{Password}';
            create role lead_all login password '{Password}'; create role stranger login password '{Password}';
            """);
    }

    public async Task DisposeAsync()
    {
        if (IsInstalled)
        {
            await Stop();
        }

        Directory.Delete(_folder, recursive: true);
    }

    public Task Start() => Run("pg_ctl", "-D", Data, "-w", "-t", "60", "-l", Path.Combine(_folder, "log"), "start");

    public Task Stop(string mode = "immediate") => Run("pg_ctl", "-D", Data, "-w", "-m", mode, "stop");

    public async Task Restart()
    {
        await Stop();
        await Start();
    }

    /// <summary>Which certificate the server shows from its next start or reload on.</summary>
    public void UseCertificate(string name) => File.WriteAllText(
        Path.Combine(Data, "postgresql.auto.conf"),
        $"""
        listen_addresses = '127.0.0.1'
        port = {Port.ToString(CultureInfo.InvariantCulture)}
        unix_socket_directories = '{_folder}'
        ssl = on
        ssl_cert_file = '{_folder}/{name}.crt'
        ssl_key_file = '{_folder}/{name}.key'
        fsync = off
        max_connections = 60
        """);

    public Task Reload() => Run("pg_ctl", "-D", Data, "reload");

    /// <summary>A new database, prepared, with its vans (01 and 02 in the north, 03 in the south), offices and lead.</summary>
    public async Task<Firm> NewFirm()
    {
        Firm firm = await NewEmpty();
        await FleetDatabase.Prepare(firm.Address("firm_owner"));
        await Administer(
            """
            grant handsfree_van to van_01, van_02, van_03; grant handsfree_office to office_north, office_south; grant handsfree_lead to lead_all;
            insert into handsfree.member values ('van_01', 'north'), ('van_02', 'north'), ('van_03', 'south'), ('office_north', 'north'), ('office_south', 'south'), ('lead_all', '*');
            """, firm.Name);
        return firm;
    }

    /// <summary>A new database that nothing was laid out in.</summary>
    public async Task<Firm> NewEmpty()
    {
        string name = FormattableString.Invariant($"firm_{Interlocked.Increment(ref _databases)}");
        await Administer($"create database {name} owner firm_owner");
        return new Firm(this, name);
    }

    /// <summary>Runs statements as the server's own administrator.</summary>
    public async Task Administer(string sql, string database = "postgres")
    {
        await using NpgsqlConnection connection = await Administrator(database);
        await using NpgsqlCommand command = new(sql, connection);
        command.CommandTimeout = 600;
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>A connection through the socket, past every right.</summary>
    public async Task<NpgsqlConnection> Administrator(string database)
    {
        NpgsqlConnection connection = new($"Host={_folder};Port={Port.ToString(CultureInfo.InvariantCulture)};Username=postgres;Database={database};Pooling=false;SearchPath=handsfree");
        await connection.OpenAsync();
        return connection;
    }

    static int FreePort()
    {
        using TcpListener probe = new(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }

    /// <summary>Lets the server's user have a file; who is not root runs the server as itself.</summary>
    public static void Give(string path)
    {
        if (IsRoot)
        {
            using Process chown = Process.Start("chown", ["-R", "postgres", path]);
            chown.WaitForExit();
        }
    }

    static async Task Run(string program, params string[] arguments)
    {
        ProcessStartInfo start = IsRoot
            ? new("/usr/bin/setpriv", ["--reuid=postgres", "--regid=postgres", "--clear-groups", $"{Programs}/{program}", .. arguments])
            : new($"{Programs}/{program}", arguments);
        // The server keeps what it inherits: it must not hold the test's own output open.
        (start.RedirectStandardInput, start.WorkingDirectory) = (true, "/");
        start.ArgumentList.Insert(0, "1");
        (start.FileName, start.ArgumentList[0]) = ("/bin/sh", start.FileName);
        string[] words = [.. start.ArgumentList];
        start.ArgumentList.Clear();
        foreach (string word in (string[])["-c", "exec \"$@\" >/dev/null 2>&1", "sh", .. words])
        {
            start.ArgumentList.Add(word);
        }

        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}");
    }
}

/// <summary>A firm's database on the tests' server.</summary>
public sealed record Firm(PostgresServer Server, string Name)
{
    public string Url(string login, int? port = null) => FormattableString.Invariant($"postgres://{login}@localhost:{port ?? Server.Port}/{Name}");

    public FleetAddress Address(string login, int? port = null) => FleetAddress.Read(Url(login, port), Server.Trust, Server.PasswordFile, _ => null);

    /// <summary>The options of a command that goes there.</summary>
    public string[] Options(string option, string login, int? port = null) => [option, Url(login, port), "--trust", Server.Trust, "--password-file", Server.PasswordFile];

    /// <summary>One value, read past every right.</summary>
    public async Task<object?> Value(string sql)
    {
        await using NpgsqlConnection connection = await Server.Administrator(Name);
        await using NpgsqlCommand command = new(sql, connection);
        return await command.ExecuteScalarAsync();
    }

    public async Task<long> Count(string table, string where = "true") => (long)(await Value($"select count(*) from {table} where {where}"))!;

    /// <summary>Statements past every right.</summary>
    public Task Administer(string sql) => Server.Administer($"set search_path = handsfree; {sql}", Name);

    /// <summary>Statements as a login, over the wire.</summary>
    public async Task<object?> As(string login, string sql)
    {
        await using FleetDatabase database = await FleetDatabase.Open(Address(login));
        await using NpgsqlCommand command = new(sql, database.Connection);
        return await command.ExecuteScalarAsync();
    }
}
