[assembly: AssemblyTrait("Speed", "Fast")]
