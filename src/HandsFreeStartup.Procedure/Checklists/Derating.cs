using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>What the altitude leaves of the input of the plate. The maker's own instructions win over both rules.</summary>
public static class Derating
{
    /// <summary>The rule that holds for the furnace: fan-assisted ones lose less.</summary>
    public static AltitudeDerate Rule(ApplianceSheet appliance) =>
        appliance.Branch.DraftBy == DraftBy.Fan ? AltitudeDerate.FanAssisted : AltitudeDerate.CodeDefault;

    /// <summary>Share of the input at sea level that may be burned at the site, 0 to 1.</summary>
    public static double Share(ApplianceSheet appliance, Site site) => Rule(appliance).Factor(Altitude.FromFeet((double)site.AltitudeFeet));

    /// <summary>Largest input at the site, Btu/h; null where the sheet states none for sea level.</summary>
    public static decimal? LargestInput(ApplianceSheet appliance, Site site) => appliance.SeaLevelInput * (decimal)Share(appliance, site);

    /// <summary>The same as told, with its source.</summary>
    public static Message Text(ApplianceSheet appliance, Site site)
    {
        double share = Share(appliance, site);
        string source = $"{Rule(appliance).Source}; the maker's instructions come first";
        return share == 1
            ? (Message)$"At {site.AltitudeFeet} feet the full input holds ({source})."
            : $"At {site.AltitudeFeet} feet {Math.Round((decimal)(100 * share), MidpointRounding.AwayFromZero)} percent of the input at sea level are left{LargestText(appliance, site)} ({source}).";
    }

    static Message LargestText(ApplianceSheet appliance, Site site) =>
        LargestInput(appliance, site) is { } largest ? (Message)$", at most {Math.Round(largest, MidpointRounding.AwayFromZero)} Btu/h" : "";
}
