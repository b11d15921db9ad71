using System.Globalization;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Sets up the connection through which a log is written.</summary>
static class LogConnection
{
    const int InstructionsBetween = 10_000;
    const int MostInstructions = 20_000_000;

    /// <summary>Exclusive, write-ahead, synced at every commit, triggers for REPLACE too: set, and read back.</summary>
    public static void Prepare(SqliteConnection connection)
    {
        Demand(connection, "pragma locking_mode=exclusive", "exclusive");
        Demand(connection, "pragma journal_mode=wal", "wal");
        Execute(connection, "pragma synchronous=full");
        Demand(connection, "pragma synchronous", "2");
        Execute(connection, "pragma recursive_triggers=on");
        Demand(connection, "pragma recursive_triggers", "1");
        Demand(connection, "pragma secure_delete=on", "1");
        // Moving the log into the main file costs many syncs; it is done when a job is opened and closed, never while somebody waits for an event.
        Demand(connection, "pragma wal_autocheckpoint=0", "0");
    }

    /// <summary>
    /// Reads a stranger's file: functions that its schema names are not run, and a query that works without end is broken off. The count is of the database's own
    /// instructions and the same on every machine; the largest job needs less than a hundredth of it.
    /// </summary>
    public static void Guard(SqliteConnection connection)
    {
        Execute(connection, "pragma trusted_schema=off");
        Execute(connection, "pragma cell_size_check=on");
        SQLitePCL.raw.sqlite3_limit(connection.Handle, SQLitePCL.raw.SQLITE_LIMIT_LENGTH, JobSnapshot.MostBytes);
        int left = MostInstructions / InstructionsBetween;
        SQLitePCL.raw.sqlite3_progress_handler(connection.Handle, InstructionsBetween, _ => left-- > 0 ? 0 : 1, null);
    }

    /// <summary>
    /// Stops where a record's tables are not those that its format lays down: what stands in their place (a view, computed columns) could make any number of rows of any size out of
    /// nothing, however small the file.
    /// </summary>
    public static void RequireTables(SqliteConnection connection, LogFormat format)
    {
        string[] tables = [.. format.Schema.Where(statement => statement.StartsWith("create table", StringComparison.Ordinal)).Select(AsKept)];
        if (tables.Except(Statements(connection)).Any())
        {
            throw new LogException("The tables of the file are not those of a record of this program: it is damaged, or another program wrote it.");
        }
    }

    /// <summary>Every statement of the schema as the database keeps it.</summary>
    public static IEnumerable<string> Statements(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "select coalesce(sql, type || ' ' || name) from sqlite_schema";
        using SqliteDataReader rows = command.ExecuteReader();
        while (rows.Read())
        {
            yield return rows.GetString(0);
        }
    }

    /// <summary>SQLite keeps a statement as it was given, but for its first two words, which it writes in capitals.</summary>
    public static string AsKept(string statement) => string.Join(' ', statement.Split(' ', 3) is [var create, var what, var rest]
        ? [create.ToUpperInvariant(), what.ToUpperInvariant(), rest]
        : [statement]);

    /// <summary>Moves everything into the main file and empties the write-ahead log.</summary>
    public static void Checkpoint(SqliteConnection connection) => Execute(connection, "pragma wal_checkpoint(truncate)");

    public static void LayDown(SqliteConnection connection)
    {
        using SqliteTransaction transaction = connection.BeginTransaction();
        Execute(connection, FormattableString.Invariant($"pragma application_id={LogFormat.ApplicationId}"));
        Execute(connection, FormattableString.Invariant($"pragma user_version={LogFormat.Current.Version}"));
        foreach (string statement in LogFormat.Current.Schema)
        {
            Execute(connection, statement);
        }
        transaction.Commit();
    }

    /// <summary>The format of a job's file; stops where it is no job of this program, or one of a newer program.</summary>
    public static LogFormat FormatOf(SqliteConnection connection, string path)
    {
        if (Number(connection, "pragma application_id") != LogFormat.ApplicationId)
        {
            throw new LogException($"{path} is no record of this program.");
        }

        long version = Number(connection, "pragma user_version");
        return LogFormat.Find(version) ?? throw new LogException(FormattableString.Invariant(
            $"The record {path} has format {version}; this program knows formats up to {LogFormat.Current.Version}. Use the program that wrote it, or a newer one."));
    }

    /// <summary>Stops before anything is written to a file that cannot take further events.</summary>
    public static void RefuseForeign(SqliteConnection connection, string path)
    {
        LogFormat format = FormatOf(connection, path);
        if (format != LogFormat.Current)
        {
            throw new LogException(FormattableString.Invariant(
                $"The record {path} has format {format.Version} of an earlier program: it can be read, reviewed and verified, but takes no further event. Begin a new job."));
        }
    }

    public static string Text(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }

    static long Number(SqliteConnection connection, string sql) => long.Parse(Text(connection, sql), CultureInfo.InvariantCulture);

    public static void Execute(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    static void Demand(SqliteConnection connection, string sql, string expected)
    {
        string answer = Text(connection, sql);
        if (answer != expected)
        {
            throw new LogException($"The database answers '{answer}' instead of '{expected}' to '{sql}', so the record would not be safe here. Choose a local disk with --data.");
        }
    }
}
