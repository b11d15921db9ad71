using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>The large instructions of a stop. Common practice, no source; the gas supplier's and the fire service's own rules come first.</summary>
static class Alarms
{
    public static Alarm Of(StopCause cause, Settings settings) => cause switch
    {
        StopCause.GasSmell => new Alarm("GAS SMELL",
        [
            "No switches, no flame, no phone in here.",
            "Close the gas at the shutoff only if it is safe on your way.",
            "Everybody leaves the building now. Leave the doors open behind you.",
            $"Call {Whom(settings)} from outside.",
            "Do not go back in until they say that it is safe.",
        ]),
        StopCause.CarbonMonoxide => new Alarm("CARBON MONOXIDE",
        [
            "Everybody leaves the building now, also those who feel well. Leave the doors open behind you.",
            "Switch the furnace off only if it is on your way.",
            $"Call {Emergency(settings)} from outside and say carbon monoxide.",
            "Headache, dizziness or nausea: tell them.",
            "Do not go back in until they say that it is safe.",
        ]),
        _ => new Alarm("EMERGENCY STOP",
        [
            "Switch the furnace off and close the gas if you can do so safely.",
            "Get yourself and others to safety.",
            $"Call {Emergency(settings)} if anybody is hurt or there is fire or CO: from outside.",
            "The start-up is stopped. Nothing goes on by itself.",
        ]),
    };

    /// <summary>What must be done with a furnace that is unsafe.</summary>
    public static Alarm Unsafe(Message condition) => new("UNSAFE",
    [
        $"{condition}.",
        "Shut the furnace off and close its gas.",
        "Red-tag it: not in service, unsafe.",
        "Tell the owner in writing. The record holds the notice.",
        "Local codes and the licensed person decide whom else to tell.",
    ]);

    static Message Whom(Settings settings) =>
        settings.GasSupplier is { } supplier ? (Message)$"the gas supplier, {new MessagePart.Telephone(supplier)}, or {Emergency(settings)}" : $"the gas supplier or {Emergency(settings)}";

    static Message Emergency(Settings settings) => settings.EmergencyNumber is { } number ? (Message)$"the emergency number, {new MessagePart.Telephone(number)}," : "the emergency number";
}
