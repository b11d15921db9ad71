using System.Collections.Immutable;
using System.Reflection;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Makes events of every kind with arbitrary content, by their constructors: a new kind or member is covered by itself.</summary>
public sealed class ArbitraryEvent(int seed)
{
    static readonly ImmutableArray<string> Texts =
        ["", "plain", "two words", "\"quoted\" \\ back", "line\nbreak\ttab", "°F µA ü 漢字", "😀 astral", "</script> & 'x'", "\0\u001f\u007f\u2028", new('x', 5000)];

    static readonly ImmutableArray<Type> Types = [.. typeof(StartupEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(StartupEvent)))];

    readonly Random _random = new(seed);
    readonly NullabilityInfoContext _nullability = new();

    public static int KindCount => Types.Length;

    public StartupEvent Next() => (StartupEvent)Make(Types[_random.Next(Types.Length)]);

    object Make(Type type)
    {
        if (type == typeof(string))
        {
            return Texts[_random.Next(Texts.Length)];
        }
        if (type == typeof(Message))
        {
            return Message.Written(Texts[_random.Next(Texts.Length)]);
        }
        if (type == typeof(bool))
        {
            return _random.Next(2) == 0;
        }
        if (type == typeof(int))
        {
            return _random.Next(int.MinValue, int.MaxValue);
        }
        if (type == typeof(long))
        {
            return _random.NextInt64();
        }
        if (type == typeof(decimal))
        {
            return new decimal(_random.Next(), _random.Next(2), 0, _random.Next(2) == 0, (byte)_random.Next(6));
        }
        if (type == typeof(double))
        {
            return _random.Next(8) switch { 0 => double.NaN, 1 => double.NegativeInfinity, 2 => 0.1, 3 => double.Epsilon, _ => (_random.NextDouble() - 0.5) * Math.Pow(10, _random.Next(-20, 20)) };
        }
        if (type == typeof(DateTimeOffset))
        {
            return new DateTimeOffset(_random.NextInt64(DateTime.MaxValue.Ticks), TimeSpan.Zero);
        }
        if (type == typeof(TimeSpan))
        {
            return new TimeSpan(_random.NextInt64(-TimeSpan.TicksPerDay * 3, TimeSpan.TicksPerDay * 3));
        }
        if (type.IsEnum)
        {
            Array values = Enum.GetValues(type);
            return values.GetValue(_random.Next(values.Length))!;
        }
        if (type == typeof(ImmutableSortedDictionary<string, decimal>))
        {
            return Enumerable.Range(0, _random.Next(4)).ToImmutableSortedDictionary(i => $"field_{i}", _ => (decimal)Make(typeof(decimal)));
        }
        return type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>) ? MakeArray(type.GetGenericArguments()[0]) : MakeRecord(type);
    }

    object MakeArray(Type element)
    {
        Array items = Array.CreateInstance(element, _random.Next(4));
        for (int i = 0; i < items.Length; i++)
        {
            items.SetValue(Make(element), i);
        }
        return typeof(ImmutableArray).GetMethods().Single(method => method.Name == nameof(ImmutableArray.Create)
            && method.GetParameters() is [{ ParameterType.IsArray: true }]).MakeGenericMethod(element).Invoke(null, [items])!;
    }

    object MakeRecord(Type type)
    {
        ConstructorInfo constructor = type.GetConstructors().MaxBy(candidate => candidate.GetParameters().Length)!;
        object made = constructor.Invoke([.. constructor.GetParameters().Select(parameter => MakeOrNull(parameter.ParameterType, _nullability.Create(parameter)))]);
        string[] positions = [.. constructor.GetParameters().Select(parameter => parameter.Name!)];
        foreach (PropertyInfo named in type.GetProperties().Where(property => property.CanWrite && !positions.Contains(property.Name)))
        {
            named.SetValue(made, MakeOrNull(named.PropertyType, _nullability.Create(named)));
        }

        return made;
    }

    object? MakeOrNull(Type type, NullabilityInfo nullability)
    {
        Type? underlying = Nullable.GetUnderlyingType(type);
        bool mayBeNull = underlying is not null || nullability.WriteState == NullabilityState.Nullable;
        return mayBeNull && _random.Next(3) == 0 ? null : Make(underlying ?? type);
    }
}
