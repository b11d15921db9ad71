using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>The short example files.</summary>
public static class Fixture
{
    public static FileCopy Checklist => Copy("checklist.yaml");

    public static FileCopy Appliance => Copy("appliance.yaml");

    public static FileCopy Site => Copy("site.yaml");

    static FileCopy Copy(string name) => UserFile.Copy(Path.Combine(AppContext.BaseDirectory, "Fixtures", name));
}
