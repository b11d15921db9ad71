using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet.Schema;
using Npgsql;

namespace HandsFreeStartup.Fleet;

/// <summary>A connection to the firm's database, over TLS with a server whose certificate was verified, or through a socket of this machine.</summary>
public sealed class FleetDatabase : IAsyncDisposable
{
    readonly NpgsqlDataSource _source;

    FleetDatabase(FleetAddress address, NpgsqlDataSource source, NpgsqlConnection connection) => (Address, _source, Connection) = (address, source, connection);

    /// <summary>Where it is.</summary>
    public FleetAddress Address { get; }

    /// <summary>The connection; one at a time uses it.</summary>
    internal NpgsqlConnection Connection { get; }

    /// <summary>Connects to a database whose schema is this program's.</summary>
    /// <exception cref="FleetException">It cannot be reached, its certificate is not trusted, the login is refused, or its schema is older or newer.</exception>
    public static async Task<FleetDatabase> Open(FleetAddress address, CancellationToken cancellation = default)
    {
        FleetDatabase database = await Connect(address, cancellation);
        try
        {
            await Trouble.Told(address, () => Migrations.Check(database.Connection, cancellation), cancellation);
            return database;
        }
        catch
        {
            await database.DisposeAsync();
            throw;
        }
    }

    /// <summary>Brings the schema of a database to this program's, as its owner.</summary>
    /// <returns>What was done, one sentence.</returns>
    /// <exception cref="FleetException">It cannot be done.</exception>
    public static async Task<string> Prepare(FleetAddress address, CancellationToken cancellation = default)
    {
        await using FleetDatabase database = await Connect(address, cancellation);
        return await Trouble.Told(address, () => Migrations.Run(database.Connection, cancellation), cancellation);
    }

    /// <summary>Closes the connection.</summary>
    public async ValueTask DisposeAsync()
    {
        await Connection.DisposeAsync();
        await _source.DisposeAsync();
    }

    static async Task<FleetDatabase> Connect(FleetAddress address, CancellationToken cancellation)
    {
        ServerCertificate certificate = new(address);
        NpgsqlDataSourceBuilder builder = new(Settings(address).ToString());
        builder.UseSslClientAuthenticationOptionsCallback(certificate.Demand);
        NpgsqlDataSource source = builder.Build();
        NpgsqlConnection connection = source.CreateConnection();
        try
        {
            await Trouble.Told(address, async () => { await connection.OpenAsync(cancellation); return true; }, cancellation, () => certificate.WhatIsWrong);
            return new FleetDatabase(address, source, connection);
        }
        catch
        {
            await connection.DisposeAsync();
            await source.DisposeAsync();
            throw;
        }
    }

    static NpgsqlConnectionStringBuilder Settings(FleetAddress address) => new()
    {
        Host = address.Host,
        Port = address.Port,
        Username = address.User,
        Database = address.Database,
        Password = address.Password.Length == 0 ? null : address.Password,
        // The certificate is verified in full by ServerCertificate, which can also tell what is wrong with it.
        SslMode = address.IsLocal ? SslMode.Disable : SslMode.Require,
        Pooling = false,
        Timeout = 15,
        CommandTimeout = 120,
        IncludeErrorDetail = false,
        ApplicationName = "handsfree-startup",
        SearchPath = Migrations.SchemaName,
    };
}

/// <summary>What is demanded of a server's certificate: it leads to a trusted one, is valid today, and is made out to that server.</summary>
sealed class ServerCertificate(FleetAddress address)
{
    public string? WhatIsWrong { get; private set; }

    public void Demand(System.Net.Security.SslClientAuthenticationOptions options)
    {
        options.TargetHost = address.Host;
        options.EnabledSslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13;
        X509ChainPolicy policy = new() { RevocationMode = X509RevocationMode.NoCheck };
        if (address.TrustFile is { } file)
        {
            policy.TrustMode = X509ChainTrustMode.CustomRootTrust;
            policy.CustomTrustStore.AddRange(Trusted(file));
        }

        options.CertificateChainPolicy = policy;
        options.RemoteCertificateValidationCallback = (_, _, chain, errors) =>
        {
            WhatIsWrong = errors == System.Net.Security.SslPolicyErrors.None ? null : Sentence(chain, errors);
            return WhatIsWrong is null;
        };
    }

    static X509Certificate2Collection Trusted(string file)
    {
        X509Certificate2Collection trusted = [];
        try
        {
            trusted.ImportFromPemFile(file);
        }
        catch (Exception error) when (error is CryptographicException || FileTrouble.Is(error))
        {
            throw new FleetException($"The file of trusted certificates {file} cannot be read: name a PEM file with --trust.", cause: error);
        }

        return trusted.Count > 0 ? trusted : throw new FleetException($"The file {file} holds no certificate: name a PEM file with --trust.");
    }

    string Sentence(X509Chain? chain, System.Net.Security.SslPolicyErrors errors) =>
        errors.HasFlag(System.Net.Security.SslPolicyErrors.RemoteCertificateNotAvailable) ? $"The server {address.Host} shows no certificate: nothing is sent to it. Ask who runs it."
        : errors.HasFlag(System.Net.Security.SslPolicyErrors.RemoteCertificateNameMismatch) ? $"The certificate of the server is not made out to {address.Host}: nothing is sent to it. Write the name that the certificate has, or ask who runs the server."
        : chain?.ChainStatus.Any(one => one.Status.HasFlag(X509ChainStatusFlags.NotTimeValid)) == true
            ? $"The certificate of the server {address.Host} is not valid at the time of this machine: nothing is sent to it. Look at the clock of this machine first, then ask who runs the server."
        : $"The certificate of the server {address.Host} leads to nobody who is trusted here: nothing is sent to it. Name the file of the firm's own certificate authority with --trust FILE.";
}
