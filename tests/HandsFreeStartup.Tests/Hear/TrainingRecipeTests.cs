using System.Diagnostics;
using HandsFreeStartup.Running;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>The recipe of the models, a few steps on the processor: it needs Python with PyTorch and NumPy, flite, espeak-ng and fortunes.</summary>
public sealed class TrainingRecipeTests
{
    [NeedsTorch]
    public void A_few_steps_of_the_recipe_write_a_model_of_the_same_size()
    {
        using TemporaryFolder folder = new();
        ProcessStartInfo start = new("bash", [Path.Combine(ShippedFiles.Models, "training", "train_ears.sh"), Path.Combine(folder.Path, "work"), ShippedFiles.Models])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["SMOKE"] = "1" },
        };
        using Process recipe = Process.Start(start)!;
        Task<string> output = recipe.StandardOutput.ReadToEndAsync(), complaints = recipe.StandardError.ReadToEndAsync();
        recipe.WaitForExit();

        Assert.True(recipe.ExitCode == 0, output.Result + complaints.Result);
        Assert.Equal(new FileInfo(Path.Combine(ShippedFiles.Models, ModelFiles.Small)).Length, new FileInfo(Path.Combine(folder.Path, "work", "tiny.out.bin")).Length);
    }

    sealed class NeedsTorchAttribute : FactAttribute
    {
        public NeedsTorchAttribute()
        {
            ProcessStartInfo start = new("bash", ["-c", "python3 -c 'import torch, numpy' && command -v flite espeak-ng && test -d /usr/share/games/fortunes"])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            using Process probe = Process.Start(start)!;
            probe.WaitForExit();
            Skip = probe.ExitCode == 0 ? null : "not installed: Python with PyTorch and NumPy, flite, espeak-ng or fortunes";
        }
    }
}
