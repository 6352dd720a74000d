namespace Toepan.Demo.Scenario;

/// <summary>
/// The invented vehicles of the Northmoor Vehicle Safety Trust's programme, three classes of five invented makes. All names and figures are the
/// generator's own; no vehicle stands for a real one.
/// </summary>
public static class Fleet
{
    private const string Van = "delivery-van";
    private const string Electric = "compact-electric";
    private const string Pickup = "crew-cab-pickup";

    public static readonly DemoVehicle Voyle = New("Tarnbrook", "Voyle", 2030, Van, 1690, new(0.3, 0.2, 0.3, 0.3, 0.4, 0.3));
    public static readonly DemoVehicle VoyleLong = New("Tarnbrook", "Voyle Long", 2030, Van, 1745, new(0.3, 0.2, 0.3, 0.3, 0.4, 0.3));
    public static readonly DemoVehicle Porter = New("Velsey", "Porter", 2029, Van, 1655, new(1.3, 1.3, 1.0, 1.2, 1.2, 1.4));
    public static readonly DemoVehicle Drayman = New("Quillon", "Drayman", 2028, Van, 1720, new(2.3, 2.2, 1.8, 2.4, 2.0, 2.3));
    public static readonly DemoVehicle Carrick = New("Dunmere", "Carrick", 2026, Van, 1610, new(3.9, 3.4, 3.2, 3.8, 3.3, 3.9));
    public static readonly DemoVehicle Lade = New("Askervold", "Lade", 2031, Van, 1780, new(0.9, 0.8, 0.6, 0.9, 0.8, 1.0));
    public static readonly DemoVehicle Minnow = New("Tarnbrook", "Minnow", 2031, Electric, 1480, new(0.2, 0.3, 0.2, 0.2, 0.3, 0.2));
    public static readonly DemoVehicle Ilex = New("Velsey", "Ilex", 2030, Electric, 1525, new(0.7, 1.0, 0.9, 1.4, 0.9, 0.8));
    public static readonly DemoVehicle Quince = New("Quillon", "Quince", 2029, Electric, 1430, new(1.8, 1.6, 1.5, 1.9, 1.4, 2.0));
    public static readonly DemoVehicle Fennel = New("Dunmere", "Fennel", 2027, Electric, 1390, new(2.8, 2.8, 2.3, 2.9, 2.5, 3.0));
    public static readonly DemoVehicle Elvar = New("Askervold", "Elvar", 2031, Electric, 1560, new(0.4, 0.2, 0.4, 0.3, 0.2, 0.4));
    public static readonly DemoVehicle ElvarEstate = New("Askervold", "Elvar Estate", 2031, Electric, 1590, new(0.4, 0.2, 0.4, 0.3, 0.2, 0.4));
    public static readonly DemoVehicle Fellside = New("Tarnbrook", "Fellside", 2029, Pickup, 2080, new(1.0, 0.9, 0.8, 1.1, 1.1, 1.2));
    public static readonly DemoVehicle Causeway = New("Velsey", "Causeway", 2028, Pickup, 2140, new(2.0, 1.8, 1.6, 2.0, 2.2, 2.6));
    public static readonly DemoVehicle Bullace = New("Quillon", "Bullace", 2026, Pickup, 2210, new(3.4, 2.6, 2.6, 3.2, 3.5, 4.0));
    public static readonly DemoVehicle Moorland = New("Dunmere", "Moorland", 2030, Pickup, 2165, new(0.5, 0.3, 0.3, 0.4, 0.5, 0.4));
    public static readonly DemoVehicle Skarv = New("Askervold", "Skarv", 2030, Pickup, 2250, new(1.6, 1.4, 1.2, 1.6, 1.5, 1.7));

    /// <summary>Vehicles of one structure: the twin, the tested one, the evidence document.</summary>
    public static readonly (DemoVehicle Twin, DemoVehicle Of, string Evidence)[] Twins =
    [
        (VoyleLong, Voyle, "Structure statement TB-1104: same body forward of the B-pillar, same restraints"),
        (ElvarEstate, Elvar, "Structure statement AV-0217: same body forward of the rear axle, same restraints"),
    ];

    private static DemoVehicle New(string make, string model, int year, string vehicleClass, int kerbMassKg, BuildQuality build) =>
        new($"{make}-{model}-{year + 1}".ToLowerInvariant().Replace(' ', '-'), make, model, year, year + 3, vehicleClass, kerbMassKg, build);
}
