using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json.Nodes;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>A test that needs Chromium; without it, or without PostgreSQL, it is reported as skipped.</summary>
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = !File.Exists(Browser.Program) ? "not installed: chromium" : PostgresServer.IsInstalled ? null! : "not installed: postgresql-15";
}

/// <summary>A real browser without a window, led by its own protocol over a socket of this machine.</summary>
sealed class Browser : IAsyncDisposable
{
    public const string Program = "/usr/bin/chromium";

    readonly Process _process;
    readonly string _profile;
    readonly ClientWebSocket _socket = new();
    int _last;

    Browser(Process process, string profile) => (_process, _profile) = (process, profile);

    public static async Task<Browser> Start()
    {
        string profile = Directory.CreateTempSubdirectory("handsfree-browser-").FullName;
        Process process = Process.Start(new ProcessStartInfo(
            Program, ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run", "--remote-debugging-port=0", $"--user-data-dir={profile}", "about:blank"])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        Browser browser = new(process, profile);
        string file = Path.Combine(profile, "DevToolsActivePort");
        for (int i = 0; i < 600 && !(File.Exists(file) && File.ReadAllLines(file).Length == 2); i++)
        {
            await Task.Delay(100);
        }

        string port = File.ReadAllLines(file)[0];
        using HttpClient client = new();
        JsonArray pages = JsonNode.Parse(await client.GetStringAsync($"http://127.0.0.1:{port}/json/list"))!.AsArray();
        string page = (string)pages.First(one => (string)one!["type"]! == "page")!["webSocketDebuggerUrl"]!;
        await browser._socket.ConnectAsync(new Uri(page), CancellationToken.None);
        await browser.Order("Page.enable");
        await browser.Order("Accessibility.enable");
        return browser;
    }

    public async Task Show(string file, string scheme)
    {
        await Order("Emulation.setEmulatedMedia", new JsonObject { ["features"] = new JsonArray { new JsonObject { ["name"] = "prefers-color-scheme", ["value"] = scheme } } });
        await Order("Page.navigate", new JsonObject { ["url"] = new Uri(file).AbsoluteUri });
        for (int i = 0; i < 200 && await Evaluate("document.readyState + ' ' + location.href.split('/').pop()") != $"complete {Path.GetFileName(file)}"; i++)
        {
            await Task.Delay(50);
        }
    }

    /// <summary>The value of an expression within the page, as text. The page itself runs no script.</summary>
    public async Task<string> Evaluate(string expression) =>
        (await Order("Runtime.evaluate", new JsonObject { ["expression"] = $"String({expression})", ["returnByValue"] = true }))["result"]!["value"]!.GetValue<string>();

    /// <summary>Waits until an expression has that value.</summary>
    public async Task Until(string expression, string value)
    {
        for (int i = 0; i < 200 && await Evaluate(expression) != value; i++)
        {
            await Task.Delay(50);
        }

        Assert.Equal(value, await Evaluate(expression));
    }

    public async Task Press(string key, int code)
    {
        foreach (string type in (string[])["keyDown", "keyUp"])
        {
            await Order("Input.dispatchKeyEvent", new JsonObject { ["type"] = type, ["key"] = key, ["code"] = key, ["windowsVirtualKeyCode"] = code, ["text"] = type == "keyDown" && key == "Enter" ? "\r" : "" });
        }
    }

    /// <summary>What a screen reader is told: role and name of everything, in order.</summary>
    public async Task<IReadOnlyList<(string Role, string Name)>> Told() =>
        [.. (await Order("Accessibility.getFullAXTree"))["nodes"]!.AsArray().Where(node => node!["ignored"]?.GetValue<bool>() != true)
            .Select(node => ((string?)node!["role"]?["value"] ?? "", node["name"]?["value"]?.ToString() ?? ""))];

    public async Task<byte[]> Picture() => Convert.FromBase64String((string)(await Order("Page.captureScreenshot"))["data"]!);

    public async ValueTask DisposeAsync()
    {
        _socket.Dispose();
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_profile, recursive: true);
    }

    async Task<JsonNode> Order(string method, JsonObject? parameters = null)
    {
        int id = ++_last;
        byte[] order = Encoding.UTF8.GetBytes(new JsonObject { ["id"] = id, ["method"] = method, ["params"] = parameters ?? [] }.ToJsonString());
        await _socket.SendAsync(order, WebSocketMessageType.Text, endOfMessage: true, CancellationToken.None);
        while (true)
        {
            JsonNode answer = JsonNode.Parse(await Receive())!;
            if (answer["id"]?.GetValue<int>() == id)
            {
                return answer["error"] is { } error ? throw new InvalidOperationException($"{method}: {error.ToJsonString()}") : answer["result"]!;
            }
        }
    }

    async Task<byte[]> Receive()
    {
        using MemoryStream whole = new();
        byte[] part = new byte[1 << 16];
        using CancellationTokenSource late = new(TimeSpan.FromSeconds(60));
        WebSocketReceiveResult read;
        do
        {
            read = await _socket.ReceiveAsync(part, late.Token);
            whole.Write(part, 0, read.Count);
        }
        while (!read.EndOfMessage);
        return whole.ToArray();
    }
}
