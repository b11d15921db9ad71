using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>A certificate authority of the tests' own, and servers' certificates good and bad.</summary>
static class TestCertificates
{
    public static void Write(string folder)
    {
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        using X509Certificate2 authority = Authority("Firm of the tests", now), stranger = Authority("Somebody else", now);
        File.WriteAllText(Path.Combine(folder, "authority.crt"), authority.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder, "stranger.crt"), stranger.ExportCertificatePem());
        Server(folder, "server", authority, "localhost", now.AddDays(-1), now.AddDays(7));
        Server(folder, "other", authority, "elsewhere.example", now.AddDays(-1), now.AddDays(7));
        Server(folder, "old", authority, "localhost", now.AddDays(-20), now.AddDays(-10));
    }

    static X509Certificate2 Authority(string name, DateTimeOffset now)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        return request.CreateSelfSigned(now.AddDays(-30), now.AddDays(30));
    }

    static void Server(string folder, string file, X509Certificate2 authority, string name, DateTimeOffset from, DateTimeOffset to)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        names.AddDnsName(name);
        if (name == "localhost")
        {
            names.AddIpAddress(IPAddress.Loopback);
        }

        request.CertificateExtensions.Add(names.Build());
        using X509Certificate2 certificate = request.Create(authority, from, to, RandomNumberGenerator.GetBytes(8));
        File.WriteAllText(Path.Combine(folder, $"{file}.crt"), certificate.ExportCertificatePem());
        File.WriteAllText(Path.Combine(folder, $"{file}.key"), key.ExportPkcs8PrivateKeyPem());
        File.SetUnixFileMode(Path.Combine(folder, $"{file}.key"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }
}
