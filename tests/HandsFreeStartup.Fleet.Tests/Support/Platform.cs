using System.Runtime.Versioning;

// File modes, and the server that the tests start, are those of Unix.
[assembly: UnsupportedOSPlatform("windows")]
