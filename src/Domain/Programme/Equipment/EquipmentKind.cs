namespace Toepan.Domain.Programme.Equipment;

/// <summary>What a piece of equipment is.</summary>
public enum EquipmentKind
{
    Transducer,
    Dummy,
    DummyPart,
    SpeedGate,
    MeasuringArm,
    Barrier,
    Camera,
    Other,
}

/// <summary>Kinds in words.</summary>
public static class EquipmentKinds
{
    public static string Word(this EquipmentKind kind) => kind switch
    {
        EquipmentKind.Transducer => "transducer",
        EquipmentKind.Dummy => "dummy",
        EquipmentKind.DummyPart => "dummy part",
        EquipmentKind.SpeedGate => "speed gate",
        EquipmentKind.MeasuringArm => "measuring arm",
        EquipmentKind.Barrier => "barrier face",
        EquipmentKind.Camera => "camera",
        _ => "other",
    };
}
