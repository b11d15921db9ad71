using System.Globalization;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>SQL on a job's file by somebody who knows nothing of this program.</summary>
public static class RawDatabase
{
    public static string Query(string path, string sql)
    {
        using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, DefaultTimeout = 1 }.ToString());
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }
}
