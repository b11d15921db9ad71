using System.Collections;
using System.Runtime.CompilerServices;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Reports.Tests.Support;

/// <summary>An object of any record type, made by its longest constructor, whatever is in it.</summary>
static class Sample
{
    public static object Of(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain switch
        {
            _ when plain == typeof(string) => "x",
            _ when plain == typeof(Evidence) => Evidence.Typed("x"),
            _ when plain == typeof(decimal) => 1.5m,
            _ when plain == typeof(double) => 1.5,
            _ when plain.IsEnum => Enum.GetValues(plain).GetValue(0)!,
            _ when plain.IsPrimitive || typeof(IEnumerable).IsAssignableFrom(plain) && plain.IsValueType && !plain.IsGenericType => Activator.CreateInstance(plain)!,
            _ when plain.IsGenericType && plain.FullName!.StartsWith("System.Collections.Immutable.", StringComparison.Ordinal) => Empty(plain),
            _ when plain.IsValueType && plain.Namespace == "System" => Activator.CreateInstance(plain)!,
            _ => plain.GetConstructors().OrderByDescending(made => made.GetParameters().Length).First() is var made
                ? made.Invoke([.. made.GetParameters().Select(parameter => Of(parameter.ParameterType))])
                : RuntimeHelpers.GetUninitializedObject(plain),
        };
    }

    static object Empty(Type type) => type.GetField("Empty")!.GetValue(null)!;
}
