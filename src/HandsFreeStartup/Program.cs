return await HandsFreeStartup.CommandLine.Run(args, Console.Out, Console.Error);
