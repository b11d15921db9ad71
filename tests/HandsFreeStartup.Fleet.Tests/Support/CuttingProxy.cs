using System.Net;
using System.Net.Sockets;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>A network between a van and the server that can be cut: after a number of packets from either side, or by hand.</summary>
sealed class CuttingProxy : IDisposable
{
    readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    readonly CancellationTokenSource _end = new();
    readonly int _target;
    int _packets;

    public CuttingProxy(int target)
    {
        _target = target;
        _listener.Start();
        _ = Accept();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>After so many packets a connection is cut; what was cut once is not cut again.</summary>
    public int? CutAfter { get; set; }

    /// <summary>Whether nothing gets through at all.</summary>
    public bool IsDown { get; set; }

    /// <summary>Whether the cut has happened.</summary>
    public bool HasCut { get; private set; }

    public void Dispose()
    {
        _end.Cancel();
        _listener.Stop();
        _end.Dispose();
    }

    async Task Accept()
    {
        try
        {
            while (true)
            {
                TcpClient client = await _listener.AcceptTcpClientAsync(_end.Token);
                _ = Connect(client);
            }
        }
        catch (Exception error) when (error is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    async Task Connect(TcpClient client)
    {
        using (client)
        {
            if (IsDown)
            {
                return;
            }

            using TcpClient server = new();
            await server.ConnectAsync(IPAddress.Loopback, _target);
            await Task.WhenAny(Pump(client, server), Pump(server, client));
        }
    }

    async Task Pump(TcpClient from, TcpClient to)
    {
        byte[] buffer = new byte[1 << 16];
        try
        {
            while (await from.GetStream().ReadAsync(buffer) is var read and > 0)
            {
                if (CutAfter is { } most && !HasCut && Interlocked.Increment(ref _packets) > most)
                {
                    HasCut = true;
                    return;
                }

                await to.GetStream().WriteAsync(buffer.AsMemory(0, read));
            }
        }
        catch (Exception error) when (error is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // The other direction was cut.
        }
    }
}
