using HandsFreeStartup;
using HandsFreeStartup.Running;

return await CommandLine.Run(args, StandardStreams.Output, StandardStreams.Error);
