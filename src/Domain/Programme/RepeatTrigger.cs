namespace Toepan.Domain.Programme;

/// <summary>Why a repeat is considered.</summary>
public enum RepeatTrigger
{
    /// <summary>A conduct item is outside its bounds, or required and not recorded.</summary>
    ConductOutside,

    /// <summary>Channels, film or points that a rating needs were lost.</summary>
    DataLost,

    /// <summary>Equipment was found faulty: a dummy part, a transducer, the barrier.</summary>
    EquipmentFault,

    /// <summary>The specimen was not as sold: damage before the run, a wrong part.</summary>
    SpecimenFault,

    /// <summary>A further run of the same vehicle to see how well the result repeats; both count.</summary>
    Confirmation,

    /// <summary>Somebody doubts the result itself. Never a reason to repeat a valid run.</summary>
    ResultDoubted,
}

/// <summary>What was decided.</summary>
public enum RepeatChoice
{
    /// <summary>Run it again.</summary>
    Repeat,

    /// <summary>Leave the run as it stands.</summary>
    Leave,
}
