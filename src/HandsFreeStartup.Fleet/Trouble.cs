using System.Net.Sockets;
using HandsFreeStartup.Doors;
using Npgsql;

namespace HandsFreeStartup.Fleet;

/// <summary>What the errors of the database and the network mean to a person, and what to do. Nothing of what the server says about values is repeated.</summary>
static class Trouble
{
    /// <summary>The server ended a session that had waited too long within a transaction.</summary>
    const string IdleInTransaction = "25P03";

    /// <summary>Does something with the database; what goes wrong becomes a sentence.</summary>
    /// <param name="address">Where it is.</param>
    /// <param name="work">What is done.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <param name="certificate">What was wrong with the server's certificate, or null.</param>
    public static async Task<T> Told<T>(FleetAddress address, Func<Task<T>> work, CancellationToken cancellation, Func<string?>? certificate = null)
    {
        try
        {
            return await work();
        }
        catch (Exception error) when (error is not FleetException && certificate?.Invoke() is { } sentence)
        {
            throw new FleetException(sentence, cause: error);
        }
        catch (Exception error) when (Cause<FleetException>(error) is { } told && told != error)
        {
            throw told;
        }
        catch (Exception error) when (Is(error) && !cancellation.IsCancellationRequested)
        {
            throw Of(address, error);
        }
    }

    /// <summary>Whether the same work may well go through at once: another one was in its way.</summary>
    public static bool IsCollision(Exception? error) => Cause<PostgresException>(error)?.SqlState is
        PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.UniqueViolation or PostgresErrorCodes.ForeignKeyViolation;

    static bool Is(Exception error) => error is NpgsqlException or SocketException or TimeoutException or IOException or ObjectDisposedException or InvalidOperationException { Source: "Npgsql" } or OperationCanceledException;

    static FleetException Of(FleetAddress address, Exception error) => Cause<PostgresException>(error) is { } refused
        ? Refused(address, refused)
        : new FleetException(
            Cause<SocketException>(error) is { SocketErrorCode: SocketError.HostNotFound or SocketError.NoData or SocketError.TryAgain }
                ? $"There is no machine {address.Host} on this network: look at the address and at the network, and try again. Nothing is lost."
                : $"The database at {address} does not answer, or the connection to it broke off: look at the network, and try again. Nothing is lost, and nothing is kept twice.",
            mayPass: true, error);

    static FleetException Refused(FleetAddress address, PostgresException refused)
    {
        (string sentence, bool mayPass) = refused.SqlState switch
        {
            PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => (
                $"The database at {address} does not take the login {address.User}: look at the name, and at the password in {FleetAddress.PasswordVariable} or in the file named with --password-file.", false),
            PostgresErrorCodes.InvalidCatalogName => ($"There is no database {address.Database} on {address.Host}: look at the end of the address.", false),
            PostgresErrorCodes.InsufficientPrivilege => ($"The login {address.User} has no right to do this in the database {address.Database}: ask its owner for the role it needs, or use another login.", false),
            PostgresErrorCodes.NotNullViolation when refused.ColumnName == "region" => (
                $"The login {address.User} belongs to no region: the owner of the database adds it by insert into handsfree.member values ('{address.User}', 'REGION').", false),
            PostgresErrorCodes.DiskFull or PostgresErrorCodes.OutOfMemory => ($"The disk or the memory of the server {address.Host} is full: ask who runs it to free some. Nothing is lost; it is tried again at the next publish.", true),
            PostgresErrorCodes.TooManyConnections => ($"The server {address.Host} has too many connections: try again later.", true),
            PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow or IdleInTransaction => (
                $"The server {address.Host} is being shut down or started: try again later. Nothing is lost, and nothing is kept twice.", true),
            PostgresErrorCodes.ReadOnlySqlTransaction => ($"The database at {address} takes nothing new: it is read-only, perhaps a copy of the real one. Look at the address, or ask who runs it.", true),
            PostgresErrorCodes.QueryCanceled or PostgresErrorCodes.LockNotAvailable => ($"The database at {address} took too long, or its owner broke the work off: try again later.", true),
            PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.UndefinedColumn or PostgresErrorCodes.UndefinedFunction or PostgresErrorCodes.InvalidSchemaName => (
                $"The database {address.Database} is not laid out as this program knows it: ask its owner to run publish --prepare with this program, or install the program that laid it out.", false),
            _ when IsCollision(refused) => ($"Another program was at the same record in {address.Database} at the same time: try again.", true),
            _ => ($"The database {address.Database} refuses this ({refused.SqlState}: {VisibleText.Of(refused.MessageText).TrimEnd('.')}): keep the record as it is and ask who runs the database.", false),
        };
        return new FleetException(sentence, mayPass, refused);
    }

    static T? Cause<T>(Exception? error)
        where T : Exception
    {
        for (; error is not null; error = error.InnerException)
        {
            if (error is T found)
            {
                return found;
            }
        }

        return null;
    }
}
