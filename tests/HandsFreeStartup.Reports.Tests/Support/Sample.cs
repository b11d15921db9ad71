using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Reports.Tests.Support;

/// <summary>An object of any record type, made by its longest constructor with what it requires, whatever is in it.</summary>
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
            _ => Made(plain),
        };
    }

    static object Made(Type type)
    {
        ConstructorInfo constructor = type.GetConstructors().MaxBy(made => made.GetParameters().Length)!;
        object made = constructor.Invoke([.. constructor.GetParameters().Select(parameter => Of(parameter.ParameterType))]);
        foreach (PropertyInfo required in type.GetProperties().Where(property => property.IsDefined(typeof(RequiredMemberAttribute))))
        {
            required.SetValue(made, Of(required.PropertyType));
        }

        return made;
    }

    static object Empty(Type type) => type.GetField("Empty")!.GetValue(null)!;
}
